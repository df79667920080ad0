/** A new tree in one of the forms, where the open one stands. */
import type { TreeFile } from '../../document/treeFile.ts';
import { figValues } from '../../species/fig.ts';
import { type FormFigures, type FormName, formFigureOutside, formRanges } from './formFigures.ts';
import { type Growth, growForm } from './growForm.ts';

/** Names of the forms, in the trade's words. */
export const formTitles: Readonly<Record<FormName, string>> = {
  'open-vase': 'Open vase',
  'single-stem': 'Single stem with scaffolds',
  'hard-pruned-vase': 'Hard-pruned vase',
  bush: 'Bush with many stems',
  fan: 'Fan',
  cordon: 'Horizontal cordon',
  'step-over': 'Step-over',
  'bare-stem': 'Bare stem',
};

/**
 * The file of a new tree. Place, standing, cultivar, dates and settings are those of the open tree; everything that
 * grew is new. Throws on figures outside the form's ranges: the sliders know them.
 * @param seed another seed is another tree of the same figures
 */
export function startFromForm(
  open: TreeFile,
  form: FormName,
  figures: FormFigures,
  growth: Growth,
  seed: number,
): TreeFile {
  const outside = formFigureOutside(form, figures);
  if (outside !== null) {
    const { min, max } = formRanges[form][outside];
    throw new Error(`startFromForm: ${outside} must be ${min} to ${max}, got ${figures[outside]}`);
  }
  const axes = growForm(form, figures, {
    growth,
    year: Number(open.season.sketchedOn.slice(0, 4)),
    values: figValues(open.settings),
    seed,
  });
  const { ext: _, ...rest } = open;
  // It is sketched as it stands, so nothing has been turned since.
  const standing = { ...open.standing, turnedDeg: 0 };
  return { ...rest, id: freshId(open.id, form), name: formTitles[form], note: '', standing, axes };
}

/** The form's name; with a number where the open tree has it already. */
function freshId(openId: string, form: FormName): string {
  if (openId !== form && !openId.startsWith(`${form}-`)) return form;
  const n = Number(openId.slice(form.length + 1));
  return `${form}-${Number.isInteger(n) && n > 0 ? n + 1 : 2}`;
}
