/**
 * A branch given another length, side or angle. A turn is rigid: the branch keeps its crooks, and all that
 * grows on it turns with it, as when a limb is tied. A new length stretches the branch alone: its buds
 * spread with it, and what grew beyond the new tip moves to the tip.
 */
import type { TreeFile } from '../../document/treeFile.ts';
import { withDescendants } from '../../geometry/tree.ts';
import { cross, normalize, rotate, scale, type Vec3 } from '../../geometry/vec.ts';
import { direction, rad, turnAboutUpright } from '../../geometry/world.ts';
import { axisOf, type Edited, refuse, type TreeAxis, withAxes } from '../edit.ts';
import { branchFigures } from '../figures.ts';
import { anyOutside } from '../limits.ts';
import { turnWood } from '../turnWood.ts';

export interface Shape {
  readonly lengthM?: number | undefined;
  readonly bearingDeg?: number | undefined;
  readonly fromUprightDeg?: number | undefined;
}

export function reshape(file: TreeFile, id: string, shape: Shape): Edited {
  const complaint = anyOutside({ ...shape });
  if (complaint !== null) return refuse(complaint);
  const axis = axisOf(file, id);
  const turned = turnedWith(file, axis, shape);
  const { file: sized, moved } = sizedTo(turned, id, shape.lengthM);
  const aside =
    moved === 0
      ? ''
      : `; ${moved === 1 ? '1 branch' : `${moved} branches`} beyond the new tip moved to the tip`;
  return { ok: true, file: sized, said: `Reshaped ${axis.name}${aside}` };
}

function turnedWith(file: TreeFile, axis: TreeAxis, shape: Shape): TreeFile {
  const old = branchFigures(axis);
  const bearing = shape.bearingDeg ?? old.bearingDeg;
  const upright = shape.fromUprightDeg ?? old.fromUprightDeg;
  if (bearing === old.bearingDeg && upright === old.fromUprightDeg) return file;
  // About the upright first, then in the plane that holds the upright and the new side.
  const level = direction(bearing, 0);
  const hinge = normalize(cross([0, 1, 0], level));
  const lean = rad(upright - old.fromUprightDeg);
  const turn = (v: Vec3): Vec3 => rotate(turnAboutUpright(v, bearing - old.bearingDeg), hinge, lean);
  const going = new Set(withDescendants({ axes: file.axes }, axis.id));
  const changed = file.axes.filter((a) => going.has(a.id)).map((a) => turnWood(a, turn));
  return withAxes(file, changed);
}

function sizedTo(file: TreeFile, id: string, lengthM: number | undefined): { file: TreeFile; moved: number } {
  const axis = axisOf(file, id);
  const oldM = branchFigures(axis).lengthM;
  if (lengthM === undefined || lengthM === oldM) return { file, moved: 0 };
  const factor = lengthM / oldM;
  const sized: TreeAxis = {
    ...axis,
    path: axis.path.map((p) => [...scale(p, factor)] as [number, number, number]),
    buds: axis.buds.map((bud) => ({ ...bud, atM: bud.atM * factor })),
  };
  const beyond = file.axes
    .filter((a) => a.parentId === id && a.atM > lengthM)
    .map((a) => ({ ...a, atM: lengthM }));
  return { file: withAxes(file, [sized, ...beyond]), moved: beyond.length };
}
