/** Wood on a new course: buds and what grows on it stay where they are along it, stretch by stretch. */
import type { TreeFile } from '../../document/treeFile.ts';
import { type Path, pathLengthM } from '../../geometry/path.ts';
import { distance, type Vec3 } from '../../geometry/vec.ts';
import type { TreeAxis } from '../edit.ts';
import { withAxes } from '../edit.ts';

export const asPath = (path: Path): TreeAxis['path'] => path.map(([x, y, z]) => [x, y, z]);

/** The place on the new course for one on the old; both have the same number of points. */
export function alongAfter(before: Path, after: Path, atM: number): number {
  let [oldM, newM] = [0, 0];
  for (let i = 1; i < before.length; i++) {
    const oldStepM = distance(before[i - 1] as Vec3, before[i] as Vec3);
    const newStepM = distance(after[i - 1] as Vec3, after[i] as Vec3);
    if (atM <= oldM + oldStepM && oldStepM > 0) return newM + ((atM - oldM) / oldStepM) * newStepM;
    oldM += oldStepM;
    newM += newStepM;
  }
  return newM;
}

/** The course bent: all that sits on it stays on its own stretch. */
export function bent(file: TreeFile, axis: TreeAxis, before: Path, after: Path): TreeFile {
  const place = (atM: number): number => alongAfter(before, after, atM);
  const wood = {
    ...axis,
    path: asPath(after),
    buds: axis.buds.map((bud) => ({ ...bud, atM: place(bud.atM) })),
  };
  const onIt = file.axes.filter((one) => one.parentId === axis.id);
  return withAxes(file, [wood, ...onIt.map((one) => ({ ...one, atM: place(one.atM) }))]);
}

/** The course stretched: buds spread with it, what grows on it keeps its distance from the base, at most the new tip. */
export function stretched(file: TreeFile, axis: TreeAxis, after: Path): TreeFile {
  const lengthM = pathLengthM(after);
  const wood = {
    ...axis,
    path: asPath(after),
    buds: axis.buds.map((bud) => ({ ...bud, atM: alongAfter(axis.path, after, bud.atM) })),
  };
  const beyond = file.axes.filter((one) => one.parentId === axis.id && one.atM > lengthM);
  return withAxes(file, [wood, ...beyond.map((one) => ({ ...one, atM: lengthM }))]);
}
