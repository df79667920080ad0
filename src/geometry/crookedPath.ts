/** Paths that are a little crooked, as wood is. All chance comes from the seed and the words. */
import { randomNormal } from './random.ts';
import { add, origin, scale, type Vec3 } from './vec.ts';
import { direction } from './world.ts';

export interface Bend {
  readonly bearingDeg: number;
  /** At the base and at the tip: 0 upright, 90 level. */
  readonly uprightDeg: number;
  readonly tipUprightDeg: number;
  readonly lengthM: number;
  readonly stretches: number;
  /** How far the bearing strays from stretch to stretch, degrees (one standard deviation). */
  readonly strayDeg: number;
}

/** Metres to 0.1 mm, as tree files hold them. */
export const tenthMm = (m: number): number => Math.round(m * 1e4) / 1e4 + 0;

const tidyPoint = ([x, y, z]: Vec3): Vec3 => [tenthMm(x), tenthMm(y), tenthMm(z)];

/** A path from the origin that bends evenly from its first to its last direction and strays a little. */
export function crookedPath(bend: Bend, seed: number, ...words: number[]): Vec3[] {
  const path: Vec3[] = [origin];
  const stretchM = bend.lengthM / bend.stretches;
  for (let i = 0; i < bend.stretches; i++) {
    const t = bend.stretches === 1 ? 0 : i / (bend.stretches - 1);
    const stray = i === 0 ? 0 : bend.strayDeg;
    const upright = bend.uprightDeg + (bend.tipUprightDeg - bend.uprightDeg) * t;
    const bearing = bend.bearingDeg + stray * randomNormal(seed, ...words, i, 1);
    const lean = upright + 0.6 * stray * randomNormal(seed, ...words, i, 2);
    path.push(add(path[i] as Vec3, scale(direction(bearing, 90 - lean), stretchM)));
  }
  return path.map(tidyPoint);
}
