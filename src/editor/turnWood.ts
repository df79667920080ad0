/** Wood turned or mirrored as a whole: its buds keep their place on the bark. */
import { outwardAt, type Path } from '../geometry/path.ts';
import { dot, type Vec3 } from '../geometry/vec.ts';
import { deg, wrapDeg } from '../geometry/world.ts';
import type { TreeAxis } from './edit.ts';

/** Angles to 0.01 degrees, as the file holds them. */
const tidyDeg = (angleDeg: number): number => wrapDeg(Math.round(angleDeg * 100) / 100);

/** How far round the wood a direction points, degrees: 0 the upper side, clockwise seen from the tip. */
export function aroundOf(path: Path, atM: number, direction: Vec3): number {
  const upper = dot(direction, outwardAt(path, atM, 0));
  const beside = dot(direction, outwardAt(path, atM, 90));
  return wrapDeg(deg(Math.atan2(beside, upper)));
}

/** @param turn a turn or a mirroring of directions: it keeps all lengths */
export function turnWood(axis: TreeAxis, turn: (v: Vec3) => Vec3): TreeAxis {
  const path = axis.path.map((p): [number, number, number] => [...turn(p)]);
  const buds = axis.buds.map((bud) => {
    const outward = turn(outwardAt(axis.path, bud.atM, bud.aroundDeg));
    return { ...bud, aroundDeg: tidyDeg(aroundOf(path, bud.atM, outward)) };
  });
  return { ...axis, path, buds };
}
