/** A branch taken off the sketch, with all that grows on it. */
import type { TreeFile } from '../../document/treeFile.ts';
import { withDescendants } from '../../geometry/tree.ts';
import { axisOf, type Edited, refuse } from '../edit.ts';

/** How many branches go with it, itself not counted. */
export const goingWith = (file: TreeFile, id: string): number =>
  withDescendants({ axes: file.axes }, id).length - 1;

/** "Delete East limb and the 14 branches on it". */
export function removalWords(file: TreeFile, id: string, verb: string): string {
  const count = goingWith(file, id);
  const others =
    count === 0 ? '' : count === 1 ? ' and the branch on it' : ` and the ${count} branches on it`;
  return `${verb} ${axisOf(file, id).name}${others}`;
}

export function remove(file: TreeFile, id: string): Edited {
  const axis = axisOf(file, id);
  if (axis.parentId === null)
    return refuse('The trunk holds the whole tree and cannot be deleted. Delete its limbs instead.');
  const going = new Set(withDescendants({ axes: file.axes }, id));
  const axes = file.axes.filter((a) => !going.has(a.id));
  return {
    ok: true,
    file: { ...file, axes },
    said: removalWords(file, id, 'Deleted'),
    select: axis.parentId,
  };
}
