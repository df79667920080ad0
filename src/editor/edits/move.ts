/** A branch that leaves another branch, or leaves it elsewhere. */
import type { TreeFile } from '../../document/treeFile.ts';
import { pathLengthM } from '../../geometry/path.ts';
import { withDescendants } from '../../geometry/tree.ts';
import { axisOf, type Edited, refuse, withAxes } from '../edit.ts';
import { outside } from '../limits.ts';

/** Moves a branch and what grows on it to `atM` along the branch `parentId`. */
export function move(file: TreeFile, id: string, parentId: string, atM: number): Edited {
  const axis = axisOf(file, id);
  const parent = axisOf(file, parentId);
  if (axis.parentId === null) return refuse('The trunk stands in the soil and cannot be moved to a branch.');
  const going = new Set(withDescendants({ axes: file.axes }, id));
  if (going.has(parentId))
    return refuse(`${parent.name} grows on ${axis.name} itself. Choose another branch.`);
  const complaint = outside('atM', atM);
  if (complaint !== null) return refuse(complaint);
  const parentLengthM = pathLengthM(parent.path);
  if (atM > parentLengthM + 5e-4) {
    return refuse(
      `${parent.name} is only ${(parentLengthM * 100).toFixed(0)} cm long. Give a smaller distance along it.`,
    );
  }
  const moved = withAxes(file, [{ ...axis, parentId, atM: Math.min(atM, parentLengthM) }]);
  // Parents come before what grows on them, so what moved goes to the end when its parent stood behind it.
  const stays = moved.axes.filter((a) => !going.has(a.id));
  const inOrder = file.axes.indexOf(parent) < file.axes.indexOf(axis);
  const axes = inOrder ? moved.axes : [...stays, ...moved.axes.filter((a) => going.has(a.id))];
  return { ok: true, file: { ...moved, axes }, said: `Moved ${axis.name}` };
}
