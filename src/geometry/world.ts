/**
 * The world frame: x east, y up, z south, in metres; right-handed. Bearings run clockwise from
 * north (0 north, 90 east); elevations run from -90 (down) over 0 (level) to 90 (straight up).
 */
import type { Vec3 } from './vec.ts';

const radPerDeg = Math.PI / 180;

export const rad = (deg: number): number => deg * radPerDeg;
export const deg = (radians: number): number => radians / radPerDeg;

/** An angle brought into 0 (included) to 360 (excluded) degrees. */
export const wrapDeg = (angleDeg: number): number => ((angleDeg % 360) + 360) % 360;

/** Signed turn from one bearing to another, in degrees, -180 (excluded) to 180 (included). */
export function turnDeg(fromDeg: number, toDeg: number): number {
  const d = wrapDeg(toDeg - fromDeg);
  return d > 180 ? d - 360 : d;
}

/** Unit vector towards a bearing and an elevation. */
export function direction(bearing: number, elevation: number): Vec3 {
  const level = Math.cos(rad(elevation));
  return [level * Math.sin(rad(bearing)), Math.sin(rad(elevation)), -level * Math.cos(rad(bearing))];
}

/** Bearing of a direction, 0 to 360; a vertical one has bearing 0. */
export function bearingDeg(v: Vec3): number {
  return v[0] === 0 && v[2] === 0 ? 0 : wrapDeg(deg(Math.atan2(v[0], -v[2])));
}

/** Elevation of a direction above the level, -90 to 90. */
export const elevationDeg = (v: Vec3): number => deg(Math.atan2(v[1], Math.hypot(v[0], v[2])));

/** Angle from upright as the trade gives it: 0 straight up, 90 level, 180 straight down. */
export const fromUprightDeg = (v: Vec3): number => 90 - elevationDeg(v);

const winds = [
  'north',
  'north-east',
  'east',
  'south-east',
  'south',
  'south-west',
  'west',
  'north-west',
] as const;

/** One of the eight winds. */
export type Wind = (typeof winds)[number];

/** The nearest of the eight winds to a bearing. */
export const wind = (bearing: number): Wind => winds[Math.round(wrapDeg(bearing) / 45) % 8] as Wind;

/** The bearing of one of the eight winds. */
export const windDeg = (of: Wind): number => winds.indexOf(of) * 45;

/** A point or direction turned clockwise, seen from above, about the upright through the origin. */
export function turnAboutUpright(v: Vec3, clockwiseDeg: number): Vec3 {
  const c = Math.cos(rad(clockwiseDeg));
  const s = Math.sin(rad(clockwiseDeg));
  return [v[0] * c - v[2] * s, v[1], v[0] * s + v[2] * c];
}
