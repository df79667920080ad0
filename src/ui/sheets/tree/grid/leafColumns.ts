/** The columns of the leaves: how many, how large, and whether that was measured. */
import { describe } from '../../../../editor/edits/describe.ts';
import { measureMidrib, sayLeavesFrom } from '../../../../editor/edits/leaves.ts';
import { midribSource } from '../../../../geometry/tree.ts';
import { quantities } from '../../../fields/quantities.ts';
import { leafSourceOptions } from '../options.ts';
import { type Column, chosen, figure, ofBranch } from './column.ts';
import { gridWords as words } from './words.ts';

function source(id: 'leavesFrom' | 'midribFrom', what: 'count' | 'midrib'): Column {
  const options = leafSourceOptions(what);
  return {
    id,
    head: words.heads[id],
    quantity: null,
    isFigure: false,
    text: ({ axis: { foliage }, bud }) => {
      if (bud !== null || foliage === null) return '';
      const from = what === 'count' ? foliage.source : midribSource(foliage);
      return options.find(({ value }) => value === from)?.text ?? '';
    },
    choices: ({ axis, bud }) => (bud === null && axis.foliage !== null ? options : null),
    edit: ({ axis, bud }, text) => {
      if (bud !== null || axis.foliage === null) return 'fixed';
      const value = chosen(options, text);
      return value === null ? null : (file) => sayLeavesFrom(file, axis.id, what, value);
    },
  };
}

export const leafColumns: readonly Column[] = [
  {
    ...figure(
      'leaves',
      quantities.count,
      ofBranch((axis) => axis.foliage?.count ?? 0),
      ({ axis }, leafCount) =>
        (file) =>
          describe(file, axis.id, { leafCount }),
    ),
    isEstimate: ({ axis, bud }) => bud === null && axis.foliage?.source === 'estimated',
  },
  source('leavesFrom', 'count'),
  {
    ...figure(
      'midrib',
      quantities.wood,
      ({ axis, bud }) => (bud === null ? (axis.foliage?.midribM ?? null) : null),
      ({ axis }, midribM) =>
        (file) =>
          measureMidrib(file, axis.id, midribM),
    ),
    isEstimate: ({ axis, bud }) =>
      bud === null && axis.foliage !== null && midribSource(axis.foliage) === 'estimated',
  },
  source('midribFrom', 'midrib'),
];
