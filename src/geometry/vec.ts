/** A point or a direction in the world: metres east (x), up (y) and south (z). */
export type Vec3 = readonly [x: number, y: number, z: number];

export const origin: Vec3 = [0, 0, 0];
export const up: Vec3 = [0, 1, 0];

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, factor: number): Vec3 => [a[0] * factor, a[1] * factor, a[2] * factor];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
export const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** The point that lies `t` of the way from `a` (0) to `b` (1). */
export const lerp = (a: Vec3, b: Vec3, t: number): Vec3 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

/** Unit vector along `a`. Throws on a vector of no length, which has no direction. */
export function normalize(a: Vec3): Vec3 {
  const n = length(a);
  if (!(n > 0)) throw new Error(`normalize: a vector needs a length above 0, got [${a.join(', ')}]`);
  return scale(a, 1 / n);
}

/** `a` turned by `angleRad` about the unit axis `axis`, right-handed (Rodrigues' formula). */
export function rotate(a: Vec3, axis: Vec3, angleRad: number): Vec3 {
  const c = Math.cos(angleRad);
  const s = Math.sin(angleRad);
  return add(add(scale(a, c), scale(cross(axis, a), s)), scale(axis, dot(axis, a) * (1 - c)));
}

/** A unit vector square to the unit vector `a`; which one is unspecified but always the same. */
export function anyPerpendicular(a: Vec3): Vec3 {
  const helper: Vec3 = Math.abs(a[1]) < 0.9 ? up : [1, 0, 0];
  return normalize(cross(helper, a));
}

/** Unsigned angle between two directions, in degrees, 0 to 180. */
export function angleBetweenDeg(a: Vec3, b: Vec3): number {
  return (Math.atan2(length(cross(a, b)), dot(a, b)) * 180) / Math.PI;
}
