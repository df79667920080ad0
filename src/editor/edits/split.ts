/** A branch split in two: what lies beyond the place becomes a branch of its own, and nothing moves. */
import type { TreeFile } from '../../document/treeFile.ts';
import { type Path, pathLengthM, pathUpTo, pointAt } from '../../geometry/path.ts';
import { midribSource } from '../../geometry/tree.ts';
import { distance, sub, type Vec3 } from '../../geometry/vec.ts';
import { axisOf, type Edited, refuse, type TreeAxis } from '../edit.ts';
import { freshIds, freshName, namesOf } from '../freshIds.ts';
import { leavesOf } from './leaves.ts';

/** Neither part may be shorter. */
const shortestM = 0.005;

export function split(file: TreeFile, id: string, atM: number): Edited {
  const axis = axisOf(file, id);
  const lengthM = pathLengthM(axis.path);
  if (!(atM >= shortestM && atM <= lengthM - shortestM)) {
    return refuse(
      `${axis.name} is ${(lengthM * 100).toFixed(0)} cm long. Split it at least 5 mm from its ends.`,
    );
  }
  const [outerId = ''] = freshIds(file, 1);
  const diameterM = axis.baseDiameterM + (axis.tipDiameterM - axis.baseDiameterM) * (atM / lengthM);
  const innerLeaves = Math.round((axis.foliage?.count ?? 0) * (atM / lengthM));
  const inner: TreeAxis = {
    ...axis,
    path: asPath(pathUpTo(axis.path, atM)),
    tipDiameterM: diameterM,
    buds: axis.buds.filter((bud) => bud.atM <= atM),
    foliage: withCount(axis.foliage, innerLeaves),
  };
  const outer: TreeAxis = {
    ...axis,
    id: outerId,
    name: freshName(namesOf(file), `${axis.name}, outer part`),
    kind: axis.kind === 'trunk' ? 'scaffold' : axis.kind,
    parentId: id,
    atM,
    path: asPath(beyond(axis.path, atM)),
    baseDiameterM: diameterM,
    buds: axis.buds.filter((bud) => bud.atM > atM).map((bud) => ({ ...bud, atM: bud.atM - atM })),
    foliage: withCount(axis.foliage, (axis.foliage?.count ?? 0) - innerLeaves),
  };
  const axes = file.axes.flatMap((one) => {
    if (one === axis) return [inner, outer];
    return one.parentId === id && one.atM > atM ? [{ ...one, parentId: outerId, atM: one.atM - atM }] : [one];
  });
  return { ok: true, file: { ...file, axes }, said: `Split ${axis.name}`, select: outerId };
}

const asPath = (path: Path): TreeAxis['path'] => path.map(([x, y, z]) => [x, y, z]);

/** How the leaves of the whole fall to its parts is an estimate. */
const withCount = (foliage: TreeAxis['foliage'], count: number): TreeAxis['foliage'] =>
  foliage === null || count === 0
    ? null
    : leavesOf(count, 'estimated', foliage.midribM, midribSource(foliage));

/** The rest of the path, as offsets from the place where it begins. */
function beyond(path: Path, atM: number): Path {
  const start = pointAt(path, atM);
  let alongM = 0;
  const rest = path.filter((point, i) => {
    if (i > 0) alongM += distance(path[i - 1] as Vec3, point);
    return alongM > atM + 1e-9;
  });
  return [start, ...rest].map((point) => sub(point, start));
}
