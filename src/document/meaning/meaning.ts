/** Whether a file of the right shape means a tree that can stand somewhere. */
import type { TreeFile } from '../treeFile.ts';
import type { Finding } from './finding.ts';
import { findCircle, findOrphan, findRepeatedId, findWrongTrunk, parentsFirst } from './graph.ts';
import { findNamelessThing } from './names.ts';
import { findWrongPlace, oddPlaces } from './place.ts';
import { findWrongSetting } from './settings.ts';
import { tidy } from './tidy.ts';
import { findWrongTime } from './times.ts';
import { findImpossibleWood, settleWood } from './wood.ts';

export interface Understood {
  readonly file: TreeFile;
  readonly notes: readonly string[];
}

/** Notes on what is odd but may be true. */
function oddities(file: TreeFile): string[] {
  const grownIn = new Map(file.axes.map((axis) => [axis.id, axis.grownIn]));
  const older = file.axes.filter(
    (axis) => axis.parentId !== null && axis.grownIn < (grownIn.get(axis.parentId) ?? 0),
  );
  const [first] = older;
  if (!first) return [];
  const others = older.length > 1 ? ` So are ${older.length - 1} more.` : '';
  return [`${first.name} is entered as older than the wood it grows from.${others} Check the years.`];
}

/** The file as it is to be used, parents before children, or the first thing that cannot be. Places count as in the file. */
export function understand(raw: TreeFile): Understood | Finding {
  const { file, notes } = tidy(raw);
  const { axes } = file;
  const broken = findNamelessThing(file) ?? findRepeatedId(axes) ?? findWrongTrunk(axes) ?? findOrphan(axes);
  if (broken) return broken;
  const order = parentsFirst(axes);
  const wrong =
    findCircle(axes, order) ??
    findImpossibleWood(axes, order) ??
    findWrongTime(file) ??
    findWrongPlace(file) ??
    findWrongSetting(file.settings);
  if (wrong) return wrong;
  const settled = { ...file, axes: settleWood(axes, order) };
  const moved = order.some((index, i) => index !== i);
  const sorted = moved ? ['Branches were put in order, each after the one it grows from.'] : [];
  return { file: settled, notes: [...notes, ...sorted, ...oddities(settled), ...oddPlaces(settled)] };
}
