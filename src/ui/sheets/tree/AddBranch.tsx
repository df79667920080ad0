/** A new branch by its figures. */
import { useState } from 'react';
import type { TreeAxis } from '../../../editor/edit.ts';
import { add, type NewBranch } from '../../../editor/edits/add.ts';
import { firstGuess } from '../../../editor/firstGuess.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { quantities } from '../../fields/quantities.ts';
import { TextField } from '../../fields/TextField.tsx';
import { useFile, useWorkbench } from '../../state/workbench.ts';
import { conditionOptions, kindOptions } from './options.ts';
import { treeWords as words } from './words.ts';

type NumberName = {
  [Name in keyof NewBranch]: NewBranch[Name] extends number ? Name : never;
}[keyof NewBranch];

const numbers: readonly {
  readonly name: NumberName;
  readonly label: string;
  readonly as: keyof typeof quantities;
}[] = [
  { name: 'atM', label: words.fields.at, as: 'wood' },
  { name: 'lengthM', label: words.fields.length, as: 'wood' },
  { name: 'bearingDeg', label: words.fields.side, as: 'bearing' },
  { name: 'fromUprightDeg', label: words.fields.upright, as: 'angle' },
  { name: 'baseDiameterM', label: words.fields.base, as: 'thickness' },
  { name: 'tipDiameterM', label: words.fields.tip, as: 'thickness' },
  { name: 'leafCount', label: words.fields.leaves, as: 'count' },
  { name: 'budCount', label: words.fields.buds, as: 'count' },
];

export function AddBranch({ parent, onDone }: { readonly parent: TreeAxis; readonly onDone: () => void }) {
  const { editor } = useWorkbench();
  const file = useFile();
  const [branch, setBranch] = useState(() => firstGuess(file, parent));
  const change = (part: Partial<NewBranch>) => setBranch((old) => ({ ...old, ...part }));
  const finish = () => {
    if (editor.make((now) => add(now, { ...branch, parentId: parent.id }))) onDone();
  };
  return (
    <section className="branch-form is-new" aria-label={words.adding(parent.name)}>
      <h2 className="small-head is-wide">{words.adding(parent.name)}</h2>
      <TextField
        label={words.fields.name}
        value={branch.name}
        placeholder={words.fields.namePlaceholder}
        onCommit={(name) => change({ name })}
      />
      <ChoiceField
        label={words.fields.kind}
        value={branch.kind}
        options={kindOptions}
        onChoose={(kind) => change({ kind })}
      />
      {numbers.map(({ name, label, as }) => (
        <NumberField
          key={name}
          label={label}
          value={branch[name]}
          quantity={quantities[as]}
          onCommit={(value) => change({ [name]: value })}
        />
      ))}
      <ChoiceField
        label={words.fields.condition}
        value={branch.condition}
        options={conditionOptions}
        onChoose={(condition) => change({ condition })}
      />
      <div className="is-wide button-row">
        <button type="button" className="button is-main" onClick={finish}>
          {words.addNow}
        </button>
        <button type="button" className="button" onClick={onDone}>
          {words.notNow}
        </button>
      </div>
    </section>
  );
}
