/** A new tree from a form: chosen, set roughly by sliders and shown on the stage while it is; taken, it is one step of undo. */
import { useDeferredValue, useEffect, useMemo, useState } from 'react';
import type { TreeFile } from '../../../../document/treeFile.ts';
import { alongWallDeg } from '../../../../editor/forms/alongWall.ts';
import {
  type FormFigure,
  type FormFigures,
  type FormName,
  flatForms,
  formRanges,
  startFigures,
} from '../../../../editor/forms/formFigures.ts';
import type { Growth } from '../../../../editor/forms/growForm.ts';
import { formTitles, startFromForm } from '../../../../editor/forms/startFromForm.ts';
import { Segments } from '../../../fields/Segments.tsx';
import { useFile, useUnits, useWorkbench } from '../../../state/workbench.ts';
import { FormChoice } from './FormChoice.tsx';
import { FormSlider, figureText } from './FormSlider.tsx';
import './start.css';
import { startWords as words } from './words.ts';

interface Wanted {
  readonly form: FormName;
  readonly figures: FormFigures;
  readonly growth: Growth;
  readonly seed: number;
}

const figureNames: readonly FormFigure[] = [
  'trunkM',
  'limbs',
  'spreadM',
  'laterals',
  'shoots',
  'shootM',
  'towardsDeg',
];

/** Those that can be set; what stands in buds has no shoots to be long. */
const setFigures = ({ form, growth }: Wanted): FormFigure[] =>
  figureNames.filter((name) => {
    const { min, max } = formRanges[form][name];
    return max > min && !(name === 'shootM' && growth === 'buds');
  });

/** The first picture: what stands on the open tree stands on the new one. */
const first = (isInLeaf: boolean): Wanted => ({
  form: 'single-stem',
  figures: startFigures('single-stem'),
  growth: isInLeaf ? 'shoots' : 'buds',
  seed: 1,
});

/** A flat form begins along the wall it stands at. */
function figuresHere(open: TreeFile, form: FormName): FormFigures {
  const figures = startFigures(form);
  const wallDeg = flatForms.includes(form) ? alongWallDeg(open) : null;
  return wallDeg === null ? figures : { ...figures, towardsDeg: Math.round(wallDeg) };
}

export function StartSheet() {
  const { editor, view } = useWorkbench();
  const open = useFile();
  const [wanted, setWanted] = useState(() => first(open.axes.some((axis) => axis.foliage !== null)));
  const change = (part: Partial<Wanted>) => setWanted((old) => ({ ...old, ...part }));
  const shown = useDeferredValue(wanted);
  const tree = useMemo(
    () => startFromForm(open, shown.form, shown.figures, shown.growth, shown.seed),
    [open, shown],
  );
  // A tree of another size is framed anew.
  const { trunkM, spreadM } = shown.figures;
  const size = `${Math.round(trunkM * 10)}-${Math.round(spreadM * 5)}`;
  useEffect(() => view.setState({ draft: tree, draftFrame: size }), [view, tree, size]);
  // Whatever takes the sheet away, the open tree is on the stage again.
  useEffect(() => () => view.setState({ draft: null, draftFrame: null }), [view]);
  const leave = () => view.setState({ isStarting: false });
  const take = () => {
    const { form, figures, growth, seed } = wanted;
    editor.make((file) => ({
      ok: true,
      file: startFromForm(file, form, figures, growth, seed),
      said: words.started(formTitles[form]),
      select: null,
    }));
    leave();
  };
  return (
    <>
      <h2 className="headline">{words.headline}</h2>
      <p className="quiet">{words.lead}</p>
      <FormChoice
        form={wanted.form}
        onChoose={(form) => change({ form, figures: figuresHere(open, form) })}
      />
      <Segments
        label={words.growth}
        value={wanted.growth}
        options={(['shoots', 'buds'] as const).map((value) => ({ value, text: words.growths[value] }))}
        onChoose={(growth) => change({ growth })}
      />
      <Figures wanted={wanted} onChange={(part) => change({ figures: { ...wanted.figures, ...part } })} />
      <div className="start-foot">
        <button type="button" className="button is-main" onClick={take}>
          {words.take}
        </button>
        <button
          type="button"
          className="button"
          title={words.anotherTitle}
          onClick={() => change({ seed: wanted.seed + 1 })}
        >
          {words.another}
        </button>
        <button type="button" className="button" title={words.backTitle} onClick={leave}>
          {words.back}
        </button>
      </div>
      <Sources wanted={wanted} />
    </>
  );
}

const labelOf = ({ form, growth }: Wanted, name: FormFigure): string =>
  name === 'shoots' && growth === 'buds' ? words.buds : words.figure(form, name);

interface FiguresProps {
  readonly wanted: Wanted;
  readonly onChange: (part: Partial<FormFigures>) => void;
}

function Figures({ wanted, onChange }: FiguresProps) {
  return (
    <section className="form-sliders">
      {setFigures(wanted).map((name) => (
        <FormSlider
          key={name}
          name={name}
          label={labelOf(wanted, name)}
          range={formRanges[wanted.form][name]}
          value={wanted.figures[name]}
          onChange={(value) => onChange({ [name]: value })}
        />
      ))}
    </section>
  );
}

function Sources({ wanted }: { readonly wanted: Wanted }) {
  const units = useUnits();
  return (
    <details>
      <summary>{words.sources}</summary>
      <dl className="form-sources">
        {setFigures(wanted)
          .map((name) => ({ name, range: formRanges[wanted.form][name] }))
          .filter(({ range }) => range.source !== '')
          .map(({ name, range: { min, max, source } }) => (
            <div key={name}>
              <dt>
                {labelOf(wanted, name)},{' '}
                {words.from(figureText(name, min, units), figureText(name, max, units))}
              </dt>
              <dd className="quiet small">{source}</dd>
            </div>
          ))}
      </dl>
    </details>
  );
}
