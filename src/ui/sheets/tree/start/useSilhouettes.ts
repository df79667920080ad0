/** Small pictures of the forms, drawn one after the other so that the page stays quick. */
import { useEffect, useState } from 'react';
import type { TreeFile } from '../../../../document/treeFile.ts';
import { type FormName, formNames, formRanges, startFigures } from '../../../../editor/forms/formFigures.ts';
import { type Silhouette, silhouette } from '../../../../editor/forms/silhouette.ts';
import { startFromForm } from '../../../../editor/forms/startFromForm.ts';

/** A small picture shows no more shoots than this. */
const mostShoots = 15;

const drawn = new Map<FormName, Silhouette>();

function draw(file: TreeFile, form: FormName): Silhouette {
  const figures = startFigures(form);
  const shoots = Math.min(Math.max(figures.shoots, formRanges[form].shoots.min), mostShoots);
  const { axes } = startFromForm(file, form, { ...figures, shoots }, 'shoots', 1);
  return silhouette(axes, 90);
}

export function useSilhouettes(file: TreeFile): ReadonlyMap<FormName, Silhouette> {
  const [, setCount] = useState(drawn.size);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    const drawNext = () => {
      const form = formNames.find((name) => !drawn.has(name));
      if (form === undefined) return;
      drawn.set(form, draw(file, form));
      setCount(drawn.size);
      timer = setTimeout(drawNext, 0);
    };
    timer = setTimeout(drawNext, 0);
    return () => clearTimeout(timer);
  }, [file]);
  return drawn;
}
