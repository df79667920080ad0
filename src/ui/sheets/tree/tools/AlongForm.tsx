/** Shoots or buds set along a branch. */
import { useState } from 'react';
import type { TreeAxis } from '../../../../editor/edit.ts';
import { type Along, setAlong } from '../../../../editor/edits/setAlong.ts';
import { branchFigures } from '../../../../editor/figures.ts';
import { divergenceDeg } from '../../../../editor/spiral.ts';
import { figForms } from '../../../../species/fig/forms.ts';
import { NumberField } from '../../../fields/NumberField.tsx';
import { type Quantity, quantities } from '../../../fields/quantities.ts';
import { Segments } from '../../../fields/Segments.tsx';
import { useWorkbench } from '../../../state/workbench.ts';
import { toolWords } from './words.ts';

const words = toolWords.along;

/** As many as fit at the usual distance of shoots on a cordon, from a hand's breadth off the base: our choice. */
function firstAlong(axis: TreeAxis): Along {
  const { lengthM } = branchFigures(axis);
  const spacingM = figForms.shootGap.value / 100;
  const firstM = Math.min(0.1, lengthM / 2);
  return {
    what: 'shoots',
    count: Math.max(1, Math.floor((lengthM - firstM) / spacingM) + 1),
    firstM,
    spacingM,
    aroundDeg: 45,
    divergenceDeg,
    shootM: 0.4,
    leafCount: 9,
  };
}

type FigureName = Exclude<keyof Along, 'what'>;

const fields: readonly { readonly name: FigureName; readonly label: string; readonly as: Quantity }[] = [
  { name: 'count', label: words.count, as: quantities.count },
  { name: 'firstM', label: words.first, as: quantities.wood },
  { name: 'spacingM', label: words.spacing, as: quantities.wood },
  { name: 'aroundDeg', label: words.around, as: quantities.turn },
  { name: 'divergenceDeg', label: words.turn, as: quantities.turn },
  { name: 'shootM', label: words.length, as: quantities.wood },
  { name: 'leafCount', label: words.leaves, as: quantities.count },
];

export function AlongForm({ axis }: { readonly axis: TreeAxis }) {
  const { editor } = useWorkbench();
  const [along, setWanted] = useState(() => firstAlong(axis));
  const shown = fields.filter(
    ({ name }) => along.what === 'shoots' || (name !== 'shootM' && name !== 'leafCount'),
  );
  return (
    <section className="branch-form">
      <h2 className="small-head is-wide">{words.head}</h2>
      <div className="is-wide">
        <Segments
          label={words.what}
          isLabelHidden
          value={along.what}
          options={(['shoots', 'buds'] as const).map((value) => ({ value, text: words.whats[value] }))}
          onChoose={(what) => setWanted((old) => ({ ...old, what }))}
        />
      </div>
      {shown.map(({ name, label, as }) => (
        <NumberField
          key={name}
          label={label}
          value={along[name]}
          quantity={as}
          onCommit={(value) => setWanted((old) => ({ ...old, [name]: value }))}
        />
      ))}
      <button
        type="button"
        className="button is-wide"
        onClick={() => editor.make((file) => setAlong(file, axis.id, along))}
      >
        {words.act[along.what]}
      </button>
    </section>
  );
}
