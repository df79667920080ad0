/** The leaves of one shoot: their size, and what was counted or measured. */
import type { Edit, TreeAxis } from '../../../../editor/edit.ts';
import { measureMidrib, sayLeavesFrom } from '../../../../editor/edits/leaves.ts';
import { midribSource } from '../../../../geometry/tree.ts';
import { ChoiceField } from '../../../fields/ChoiceField.tsx';
import { NumberField } from '../../../fields/NumberField.tsx';
import { quantities } from '../../../fields/quantities.ts';
import { leafSourceOptions } from '../options.ts';
import { treeWords } from '../words.ts';

interface LeafFieldsProps {
  readonly axis: TreeAxis;
  readonly make: (edit: Edit) => void;
}

export function LeafFields({ axis, make }: LeafFieldsProps) {
  const { foliage, id } = axis;
  if (foliage === null) return null;
  const { fields } = treeWords;
  return (
    <>
      <ChoiceField
        label={fields.leavesFrom}
        value={foliage.source}
        options={leafSourceOptions('count')}
        onChoose={(source) => make((file) => sayLeavesFrom(file, id, 'count', source))}
      />
      <NumberField
        label={fields.midrib}
        value={foliage.midribM}
        quantity={quantities.wood}
        onCommit={(midribM) => make((file) => measureMidrib(file, id, midribM))}
      />
      <ChoiceField
        label={fields.midribFrom}
        value={midribSource(foliage)}
        options={leafSourceOptions('midrib')}
        onChoose={(source) => make((file) => sayLeavesFrom(file, id, 'midrib', source))}
      />
    </>
  );
}
