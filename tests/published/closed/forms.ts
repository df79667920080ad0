/**
 * Closed forms that the traced scenes are held against. All but Howell's are derived in a line or two from the definition of irradiance; the
 * derivation stands beside each.
 */
import { rad } from '../../../src/geometry/world.ts';

/**
 * Across an endless wall or street a direction has the angle a from the level in the plane across, and b out of that plane:
 * its solid angle is cos b da db, the sine of its elevation cos b sin a. A sensor whose normal stands at angle n in the plane then gets,
 * from the sky between two angles, the integral over a of cos(a - n) times that over b of cos^2 b L. For an even sky (L = 1) the inner one
 * is pi / 2; for the overcast sky of Moon and Spencer (L = (1 + 2 sin elevation) / 3) it is pi / 6 + 8 / 9 sin a.
 * @returns over what a level sensor gets from the whole sky
 */
export function betweenTops(
  sky: 'even' | 'overcast',
  normalDeg: number,
  fromDeg: number,
  toDeg: number,
): number {
  const [n, from, to] = [rad(normalDeg), rad(fromDeg), rad(toDeg)];
  const plain = Math.sin(to - n) - Math.sin(from - n);
  if (sky === 'even') return plain / 2;
  // Integral of cos(a - n) sin a.
  const rising = (Math.sin(n) * (to - from)) / 2 - (Math.cos(2 * to - n) - Math.cos(2 * from - n)) / 4;
  return ((Math.PI / 6) * plain + (8 / 9) * rising) / ((7 * Math.PI) / 9);
}

/** Share of the overcast sky's light on the level that comes from above an elevation: the integral over the sine s of the elevation of 2 pi s (1 + 2 s) / 3. */
export function aboveElevation(elevationDeg: number): number {
  const s = Math.sin(rad(elevationDeg));
  return ((1 - s ** 2) / 2 + (2 * (1 - s ** 3)) / 3) / (7 / 6);
}

/**
 * A level disc of radius r at height h, its centre a to the side of a level sensor: Howell, A catalog of radiation heat transfer
 * configuration factors, B-13 (from memory); with a = 0 it is r^2 / (h^2 + r^2).
 */
export function discToTheSide(r: number, h: number, a: number): number {
  const z = a * a + h * h + r * r;
  return (1 - (z - 2 * r * r) / Math.sqrt(z * z - 4 * a * a * r * r)) / 2;
}

/** What upright leaves, turned to all sides alike, pass of a beam: extinction 2 / (pi tan elevation). */
export const throughUpright = (index: number, elevationDeg: number): number =>
  Math.exp((-2 * index) / Math.PI / Math.tan(rad(elevationDeg)));

/** The same of an even sky, by 4,000 rings of the sine of the elevation. */
export function uprightSky(index: number): number {
  const rings = 4000;
  let sum = 0;
  for (let i = 0; i < rings; i++) {
    const sine = (i + 0.5) / rings;
    sum += (2 * sine * throughUpright(index, (Math.asin(sine) * 180) / Math.PI)) / rings;
  }
  return sum;
}

/**
 * Mean share of a beam passed over the disc that a ball of haze covers. At distance r from its middle the path is 2 sqrt(R^2 - r^2);
 * with depth x = extinction x R the mean of exp(-extinction x path) over the disc is the integral from 0 to 1 of 2 u exp(-2 x u) du.
 */
export const throughBall = (depth: number): number =>
  (1 - (1 + 2 * depth) * Math.exp(-2 * depth)) / (2 * depth ** 2);
