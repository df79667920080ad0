/** Paths of wood: lists of at least two points, joined by straight stretches. */
import {
  add,
  anyPerpendicular,
  cross,
  distance,
  dot,
  lerp,
  normalize,
  scale,
  sub,
  type Vec3,
} from './vec.ts';

export type Path = readonly Vec3[];

/** Length along the path, metres. */
export function pathLengthM(path: Path): number {
  let sum = 0;
  for (let i = 1; i < path.length; i++) sum += distance(path[i - 1] as Vec3, path[i] as Vec3);
  return sum;
}

/** Index of the stretch that holds `distanceM`, and how far along it (0 to 1). Clamps to the ends. */
function locate(path: Path, distanceM: number): { stretch: number; t: number } {
  let left = Math.max(0, distanceM);
  for (let i = 1; i < path.length; i++) {
    const stretchM = distance(path[i - 1] as Vec3, path[i] as Vec3);
    if (stretchM > 0 && left <= stretchM) return { stretch: i - 1, t: left / stretchM };
    left -= stretchM;
  }
  return { stretch: path.length - 2, t: 1 };
}

/** The point `distanceM` along the path; before the start or past the tip it is that end. */
export function pointAt(path: Path, distanceM: number): Vec3 {
  const { stretch, t } = locate(path, distanceM);
  return lerp(path[stretch] as Vec3, path[stretch + 1] as Vec3, t);
}

/** Unit direction of growth at `distanceM` along the path. */
export function tangentAt(path: Path, distanceM: number): Vec3 {
  const { stretch } = locate(path, distanceM);
  return normalize(sub(path[stretch + 1] as Vec3, path[stretch] as Vec3));
}

/**
 * Unit direction out of the bark at `distanceM`, `aroundDeg` round the axis: 0 is the upper side
 * (for upright wood, the side of north), and angles run clockwise as seen from the tip looking back.
 * @param north level unit direction that counts as north; another one where the wood was turned after it was sketched
 */
export function outwardAt(path: Path, distanceM: number, aroundDeg: number, north: Vec3 = [0, 0, -1]): Vec3 {
  const along = tangentAt(path, distanceM);
  const upper = upperSide(along, north);
  const beside = cross(upper, along);
  const a = (aroundDeg * Math.PI) / 180;
  return add(scale(upper, Math.cos(a)), scale(beside, Math.sin(a)));
}

/** The upper side of wood that grows along `along`: square to it, as near to upright as can be. */
function upperSide(along: Vec3, north: Vec3): Vec3 {
  const nearlyUpright = Math.hypot(along[0], along[2]) < 1e-3;
  const towards: Vec3 = nearlyUpright ? north : [0, 1, 0];
  const square = sub(towards, scale(along, dot(towards, along)));
  return nearlyUpright && dot(square, square) === 0 ? anyPerpendicular(along) : normalize(square);
}

/** The part of the path from its base to `distanceM`. */
export function pathUpTo(path: Path, distanceM: number): Path {
  const { stretch, t } = locate(path, distanceM);
  const end = lerp(path[stretch] as Vec3, path[stretch + 1] as Vec3, t);
  return [...path.slice(0, stretch + 1), end];
}
