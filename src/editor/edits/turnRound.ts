/** A branch turned round the wood it grows from, with all that grows on it. */
import type { TreeFile } from '../../document/treeFile.ts';
import { tangentAt } from '../../geometry/path.ts';
import { withDescendants } from '../../geometry/tree.ts';
import { rotate, type Vec3 } from '../../geometry/vec.ts';
import { rad } from '../../geometry/world.ts';
import { axisOf, type Edited, refuse, type TreeAxis, withAxes } from '../edit.ts';
import { chord } from '../figures.ts';
import { outside } from '../limits.ts';
import { aroundOf, turnWood } from '../turnWood.ts';

/**
 * Where a branch sits round its parent, degrees: 0 the upper side (north on upright wood), clockwise seen from the tip of
 * the parent. Null for the trunk.
 */
export function aroundParentDeg(file: TreeFile, axis: TreeAxis): number | null {
  if (axis.parentId === null) return null;
  const parent = axisOf(file, axis.parentId);
  return aroundOf(parent.path, axis.atM, chord(axis));
}

/** Turns it so that it sits at that angle; its angle with its parent stays. */
export function turnRound(file: TreeFile, id: string, aroundDeg: number): Edited {
  const complaint = outside('aroundDeg', aroundDeg);
  if (complaint !== null) return refuse(complaint);
  const axis = axisOf(file, id);
  const now = aroundParentDeg(file, axis);
  if (now === null || axis.parentId === null)
    return refuse('The trunk grows from nothing that it could be turned round.');
  const hinge = tangentAt(axisOf(file, axis.parentId).path, axis.atM);
  // Clockwise as seen from the tip is against the right hand about the direction of growth.
  const turn = (v: Vec3): Vec3 => rotate(v, hinge, -rad(aroundDeg - now));
  const going = new Set(withDescendants({ axes: file.axes }, id));
  const turned = file.axes.filter((one) => going.has(one.id)).map((one) => turnWood(one, turn));
  return { ok: true, file: withAxes(file, turned), said: `Turned ${axis.name} round its parent` };
}
