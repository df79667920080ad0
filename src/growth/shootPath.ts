/** The course of a shoot that is not there yet. */
import { type Path, pointAt, tangentAt } from '../geometry/path.ts';
import { randomNormal } from '../geometry/random.ts';
import {
  add,
  anyPerpendicular,
  cross,
  dot,
  length,
  normalize,
  scale,
  sub,
  type Vec3,
} from '../geometry/vec.ts';
import { rad } from '../geometry/world.ts';
import type { FigValues } from '../species/fig.ts';

/** A point on a shoot with its growth direction and a direction square to it, which does not turn along the shoot. */
export interface Station {
  readonly point: Vec3;
  readonly along: Vec3;
  readonly side: Vec3;
}

interface Start {
  readonly point: Vec3;
  /** Unit vector: first direction of growth. */
  readonly along: Vec3;
}

/** Level unit direction from the trunk's foot (at 0, 0, 0) out to a point; nothing within 2 cm of it. */
export function outOfCrown(point: Vec3): Vec3 {
  const out: Vec3 = [point[0], 0, point[2]];
  const far = length(out);
  return far < 0.02 ? [0, 0, 0] : scale(out, 1 / far);
}

/** `along` leaned over to `side` (unit, square to it) by an angle. */
export const lean = (along: Vec3, side: Vec3, angleDeg: number): Vec3 =>
  add(scale(along, Math.cos(rad(angleDeg))), scale(side, Math.sin(rad(angleDeg))));

/** First direction of the shoot from a bud: the wood's, leaned to the bud's side. A bud at the very tip leans less. */
export function startDirection(
  bud: { readonly along: Vec3; readonly outward: Vec3 },
  toTipM: number,
  key: number,
  seed: number,
  values: FigValues,
): Vec3 {
  const share = toTipM < 0.01 ? 0.3 : 1;
  const angle = values.attachmentDeg * share + 7 * randomNormal(seed, key, 1);
  return lean(bud.along, bud.outward, angle);
}

function squareTo(along: Vec3, side: Vec3): Vec3 {
  const square = sub(side, scale(along, dot(side, along)));
  return dot(square, square) < 1e-12 ? anyPerpendicular(along) : normalize(square);
}

/** Stations at given distances along a path; the side is carried along without twist. */
export function stationsOn(path: Path, distancesM: readonly number[]): Station[] {
  let side: Vec3 = anyPerpendicular(tangentAt(path, 0));
  return distancesM.map((m) => {
    const along = tangentAt(path, m);
    side = squareTo(along, side);
    return { point: pointAt(path, m), along, side };
  });
}

/**
 * Grows a shoot from node to node. The angle a between the shoot and the light it seeks (up, and a little out
 * of the crown) shrinks as da/ds = -k sin a, k in 1/m: phototropism and the pull against gravity in one, our
 * choice. Dropped: sag under the weight of leaves and figs. Each internode wanders by 3 degrees or so.
 * @param nodesM distances of the nodes from the base, ascending, metres
 * @param lowestM height below which it does not dip
 * @returns the path, base first and then every node
 */
export function shootPath(
  start: Start,
  nodesM: readonly number[],
  lowestM: number,
  key: number,
  seed: number,
  values: FigValues,
): Vec3[] {
  const path: Vec3[] = [start.point];
  let { point, along } = start;
  let atM = 0;
  nodesM.forEach((nodeM, i) => {
    const stepM = nodeM - atM;
    atM = nodeM;
    const light = normalize(add([0, 1, 0], scale(outOfCrown(point), values.outwardLean)));
    const pull = scale(sub(light, scale(along, dot(light, along))), values.upwardBendPerM * stepM);
    const across = anyPerpendicular(along);
    const wander = add(
      scale(across, 0.05 * randomNormal(seed, key, 2, i)),
      scale(cross(along, across), 0.05 * randomNormal(seed, key, 3, i)),
    );
    along = normalize(add(along, add(pull, wander)));
    const next = add(point, scale(along, stepM));
    point =
      next[1] >= lowestM || next[1] >= point[1] ? next : [next[0], Math.min(point[1], lowestM), next[2]];
    path.push(point);
  });
  return path;
}
