/** What is done with a branch as a whole: growth set along it, copied, mirrored, turned, thinned, split. */
import { useState } from 'react';
import type { TreeAxis } from '../../../../editor/edit.ts';
import { copyRound, mirror } from '../../../../editor/edits/copy.ts';
import { thinEverySecond } from '../../../../editor/edits/many.ts';
import { split } from '../../../../editor/edits/split.ts';
import { aroundParentDeg, turnRound } from '../../../../editor/edits/turnRound.ts';
import { branchFigures } from '../../../../editor/figures.ts';
import { NumberField } from '../../../fields/NumberField.tsx';
import { quantities } from '../../../fields/quantities.ts';
import { useFile, useWorkbench } from '../../../state/workbench.ts';
import { AlongForm } from './AlongForm.tsx';
import { toolWords as words } from './words.ts';

interface BranchToolsProps {
  readonly axis: TreeAxis;
  /** The key that opens it, where there is one. */
  readonly keyHint?: string;
}

export function BranchTools({ axis, keyHint }: BranchToolsProps) {
  const { editor } = useWorkbench();
  return (
    <details className="branch-tools is-wide">
      <summary aria-keyshortcuts={keyHint}>
        {words.more(axis.name)} {keyHint === undefined ? null : <kbd aria-hidden="true">{keyHint}</kbd>}
      </summary>
      <AlongForm key={axis.id} axis={axis} />
      {axis.parentId === null ? null : <RoundForm axis={axis} />}
      <SplitForm key={`split ${axis.id}`} axis={axis} />
      <button
        type="button"
        className="button"
        onClick={() => editor.make((file) => thinEverySecond(file, axis.id))}
      >
        {words.thin}
      </button>
    </details>
  );
}

function RoundForm({ axis }: BranchToolsProps) {
  const { editor } = useWorkbench();
  const file = useFile();
  const [count, setCount] = useState(3);
  const [stepM, setStepM] = useState(0);
  return (
    <section className="branch-form">
      <h2 className="small-head is-wide">{words.round.head}</h2>
      <NumberField label={words.round.count} value={count} quantity={quantities.count} onCommit={setCount} />
      <NumberField label={words.round.step} value={stepM} quantity={quantities.wood} onCommit={setStepM} />
      <div className="is-wide button-row">
        <button
          type="button"
          className="button"
          onClick={() => editor.make((f) => copyRound(f, axis.id, { count, stepM }))}
        >
          {words.round.act}
        </button>
        <button type="button" className="button" onClick={() => editor.make((f) => mirror(f, axis.id))}>
          {words.round.mirror}
        </button>
      </div>
      <NumberField
        label={words.round.around}
        value={aroundParentDeg(file, axis) ?? 0}
        quantity={quantities.turn}
        onCommit={(aroundDeg) => editor.make((f) => turnRound(f, axis.id, aroundDeg))}
      />
    </section>
  );
}

function SplitForm({ axis }: BranchToolsProps) {
  const { editor } = useWorkbench();
  const [atM, setAtM] = useState(() => branchFigures(axis).lengthM / 2);
  return (
    <section className="branch-form">
      <h2 className="small-head is-wide">{words.split.head}</h2>
      <NumberField label={words.split.at} value={atM} quantity={quantities.wood} onCommit={setAtM} />
      <button
        type="button"
        className="button"
        onClick={() => editor.make((file) => split(file, axis.id, atM))}
      >
        {words.split.act}
      </button>
    </section>
  );
}
