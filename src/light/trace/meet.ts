/**
 * Whether a ray meets a shape: one ray, one shape, in space, each as plain as can be. The ray is all points
 * `from + t * toSky` with t above 0.
 */
import { isInside } from '../../geometry/outline.ts';
import type { Blade, Cloud, Stem } from '../../geometry/surface.ts';
import { add, cross, distance, dot, lerp, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { turnAboutUpright } from '../../geometry/world.ts';
import { edgeOnSine } from '../tracer.ts';

const isEdgeOn = (normal: Vec3, toSky: Vec3): boolean =>
  Math.abs(dot(normal, toSky)) <= edgeOnSine * Math.hypot(...normal);

/** Double sided; edges belong to the triangle. Moller and Trumbore 1997, Journal of Graphics Tools 2(1):21. */
export function meetsTriangle(a: Vec3, b: Vec3, c: Vec3, from: Vec3, toSky: Vec3): boolean {
  const [ab, ac] = [sub(b, a), sub(c, a)];
  if (isEdgeOn(cross(ab, ac), toSky)) return false;
  const p = cross(toSky, ac);
  const determinant = dot(ab, p);
  const s = sub(from, a);
  const u = dot(s, p) / determinant;
  const q = cross(s, ab);
  const v = dot(toSky, q) / determinant;
  return u >= 0 && v >= 0 && u + v <= 1 && dot(ac, q) / determinant > 0;
}

/** Where the ray meets the plane of the blade, then whether that lies inside the outline. */
export function meetsBlade(blade: Blade, from: Vec3, toSky: Vec3): boolean {
  const { along, across } = blade;
  const normal = cross(along, across);
  if (isEdgeOn(normal, toSky)) return false;
  const t = dot(sub(blade.origin, from), normal) / dot(toSky, normal);
  if (!(t > 0)) return false;
  const inPlane = sub(add(from, scale(toSky, t)), blade.origin);
  const squared = dot(normal, normal);
  const u = dot(cross(inPlane, across), normal) / squared;
  const v = dot(cross(along, inPlane), normal) / squared;
  return isInside(blade.outline, u, v);
}

function distanceToRay(point: Vec3, from: Vec3, toSky: Vec3): number {
  const to = sub(point, from);
  const t = Math.max(0, dot(to, toSky));
  return Math.hypot(...sub(to, scale(toSky, t)));
}

const goldenShare = (Math.sqrt(5) - 1) / 2;
const goldenSteps = 64;

/**
 * The ray meets the stem when it comes nearer to the centre of one of its balls than that ball's radius. Distance
 * from a ray less radius is a convex function along the stem (distance from a convex set at an affine
 * place, less an affine radius), so golden-section search finds its least value; Kiefer 1953.
 */
export function meetsStem(stem: Stem, from: Vec3, toSky: Vec3): boolean {
  const gap = (s: number): number =>
    distanceToRay(lerp(stem.from, stem.to, s), from, toSky) -
    (stem.fromRadiusM + (stem.toRadiusM - stem.fromRadiusM) * s);
  const largestM = Math.max(stem.fromRadiusM, stem.toRadiusM);
  const reachM = distance(stem.from, stem.to) / 2 + largestM;
  if (distanceToRay(lerp(stem.from, stem.to, 0.5), from, toSky) > reachM) return false;
  let [low, high] = [0, 1];
  let [s1, s2] = [1 - goldenShare, goldenShare];
  let [gap1, gap2] = [gap(s1), gap(s2)];
  for (let i = 0; i < goldenSteps; i++) {
    if (gap1 < gap2) {
      [high, s2, gap2] = [s2, s1, gap1];
      s1 = high - goldenShare * (high - low);
      gap1 = gap(s1);
    } else {
      [low, s1, gap1] = [s1, s2, gap2];
      s2 = low + goldenShare * (high - low);
      gap2 = gap(s2);
    }
  }
  return Math.min(gap1, gap2, gap(0), gap(1)) < 0;
}

/** Where the ray enters and leaves the unit ball, metres from its start; twice the same when it misses. */
function spanOfBall(start: Vec3, step: Vec3): readonly [number, number] {
  const squared = dot(step, step);
  const middle = -dot(start, step) / squared;
  const halfSquared = middle * middle - (dot(start, start) - 1) / squared;
  if (!(halfSquared > 0)) return [0, 0];
  const half = Math.sqrt(halfSquared);
  return [middle - half, middle + half];
}

/** The same for the cube from -1 to 1: a ray that runs along two faces is in when it lies between them. */
function spanOfCube(start: Vec3, step: Vec3): readonly [number, number] {
  let [enter, leave] = [-Infinity, Infinity];
  for (const axis of [0, 1, 2] as const) {
    const faces = [-1, 1].map((face) => (face - start[axis]) / step[axis]);
    if (step[axis] === 0) {
      if (Math.abs(start[axis]) >= 1) return [0, 0];
    } else {
      enter = Math.max(enter, Math.min(...faces));
      leave = Math.min(leave, Math.max(...faces));
    }
  }
  return leave > enter ? [enter, leave] : [0, 0];
}

/** Where the ray, drawn out to both sides, enters and leaves the cloud, metres from its start; twice 0 when it misses. */
export function spanInCloudM(
  { form, centre, halfSizeM, turnedDeg = 0 }: Cloud,
  from: Vec3,
  toSky: Vec3,
): readonly [enterM: number, leaveM: number] {
  const own = (v: Vec3): Vec3 => {
    const [x, y, z] = turnAboutUpright(v, -turnedDeg);
    return [x / halfSizeM[0], y / halfSizeM[1], z / halfSizeM[2]];
  };
  const span = form === 'box' ? spanOfCube : spanOfBall;
  return span(own(sub(from, centre)), own(toSky));
}

/** Length of the ray's path inside the cloud, metres; 0 when it misses. */
export function pathInCloudM(cloud: Cloud, from: Vec3, toSky: Vec3): number {
  const [enter, leave] = spanInCloudM(cloud, from, toSky);
  return Math.max(0, leave) - Math.max(0, enter);
}
