/** One branch, to be changed by numbers. Every entry is one step of undo. */
import type { Edit, TreeAxis } from '../../../editor/edit.ts';
import { type Description, describe } from '../../../editor/edits/describe.ts';
import { move } from '../../../editor/edits/move.ts';
import { reshape, type Shape } from '../../../editor/edits/reshape.ts';
import { branchFigures } from '../../../editor/figures.ts';
import { withDescendants } from '../../../geometry/tree.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { quantities } from '../../fields/quantities.ts';
import { TextField } from '../../fields/TextField.tsx';
import { CommandButton } from '../../frame/CommandButton.tsx';
import { useFile, useWorkbench } from '../../state/workbench.ts';
import { LeafFields } from './leaves/LeafFields.tsx';
import { conditionOptions, figOptions, kindOptions, pinOptions } from './options.ts';
import { BranchTools } from './tools/BranchTools.tsx';
import { treeWords as words } from './words.ts';

const untold = { value: 'untold', text: words.figs.untold } as const;

export function BranchForm({ axis }: { readonly axis: TreeAxis }) {
  const { editor } = useWorkbench();
  const make = (edit: Edit) => void editor.make(edit);
  const say = (change: Description) => make((file) => describe(file, axis.id, change));
  const { fields } = words;
  return (
    <div className="branch-form">
      <TextField label={fields.name} value={axis.name} onCommit={(name) => say({ name })} />
      {axis.parentId === null ? null : <Origin axis={axis} parentId={axis.parentId} make={make} />}
      <ShapeFields axis={axis} make={make} />
      <ContentFields axis={axis} make={make} say={say} />
      <ChoiceField
        label={fields.condition}
        value={axis.condition}
        options={conditionOptions}
        onChoose={(condition) => say({ condition })}
      />
      <ChoiceField
        label={fields.figs}
        value={axis.bearsFigs === undefined ? 'untold' : axis.bearsFigs ? 'yes' : 'no'}
        options={axis.bearsFigs === undefined ? [untold, ...figOptions] : figOptions}
        onChoose={(figs) => {
          if (figs !== 'untold') say({ bearsFigs: figs === 'yes' });
        }}
      />
      <ChoiceField
        label={fields.pin}
        value={axis.pin ?? 'free'}
        options={pinOptions}
        onChoose={(pin) => say({ pin: pin === 'free' ? null : pin })}
      />
      <p className="quiet small is-wide">{words.hint}</p>
      <div className="is-wide">
        <CommandButton id="delete" isLong />
      </div>
      <BranchTools axis={axis} />
    </div>
  );
}

interface FormPart {
  readonly axis: TreeAxis;
  readonly make: (edit: Edit) => void;
}

/** How long it is and where it points. */
function ShapeFields({ axis, make }: FormPart) {
  const { lengthM, bearingDeg, fromUprightDeg } = branchFigures(axis);
  const shape = (change: Shape) => make((file) => reshape(file, axis.id, change));
  const { fields } = words;
  return (
    <>
      <NumberField
        label={fields.length}
        value={lengthM}
        quantity={quantities.wood}
        onCommit={(v) => shape({ lengthM: v })}
      />
      <NumberField
        label={fields.side}
        value={bearingDeg}
        quantity={quantities.bearing}
        onCommit={(v) => shape({ bearingDeg: v })}
      />
      <NumberField
        label={fields.upright}
        value={fromUprightDeg}
        quantity={quantities.angle}
        onCommit={(v) => shape({ fromUprightDeg: v })}
      />
    </>
  );
}

/** How thick it is and what it carries. */
function ContentFields({ axis, make, say }: FormPart & { readonly say: (change: Description) => void }) {
  const { fields } = words;
  return (
    <>
      <NumberField
        label={fields.base}
        value={axis.baseDiameterM}
        quantity={quantities.thickness}
        onCommit={(v) => say({ baseDiameterM: v })}
      />
      <NumberField
        label={fields.tip}
        value={axis.tipDiameterM}
        quantity={quantities.thickness}
        onCommit={(v) => say({ tipDiameterM: v })}
      />
      <NumberField
        label={fields.leaves}
        value={axis.foliage?.count ?? 0}
        quantity={quantities.count}
        onCommit={(v) => say({ leafCount: v })}
      />
      <LeafFields axis={axis} make={make} />
      <NumberField
        label={fields.buds}
        value={axis.buds.length}
        quantity={quantities.count}
        onCommit={(v) => say({ budCount: v })}
      />
    </>
  );
}

interface OriginProps extends FormPart {
  readonly parentId: string;
}

/** What it is, what it grows on and where it leaves it. */
function Origin({ axis, parentId, make }: OriginProps) {
  const file = useFile();
  const going = new Set(withDescendants({ axes: file.axes }, axis.id));
  const parents = file.axes.filter((a) => !going.has(a.id)).map((a) => ({ value: a.id, text: a.name }));
  const { fields } = words;
  return (
    <>
      <ChoiceField
        label={fields.kind}
        value={axis.kind}
        options={kindOptions}
        onChoose={(kind) => make((f) => describe(f, axis.id, { kind }))}
      />
      <ChoiceField
        label={fields.on}
        value={parentId}
        options={parents}
        onChoose={(to) => make((f) => move(f, axis.id, to, Math.min(axis.atM, lengthOf(f.axes, to))))}
      />
      <NumberField
        label={fields.at}
        value={axis.atM}
        quantity={quantities.wood}
        onCommit={(atM) => make((f) => move(f, axis.id, parentId, atM))}
      />
    </>
  );
}

function lengthOf(axes: readonly TreeAxis[], id: string): number {
  const axis = axes.find((a) => a.id === id);
  return axis === undefined ? 0 : branchFigures(axis).lengthM;
}
