/** Directions over a whole hemisphere, for bare geometry. */
import { add, anyPerpendicular, cross, scale, up, type Vec3 } from '../../geometry/vec.ts';
import { reinhartPatches } from './patches.ts';
import { randomWithin } from './waveDirections.ts';

export interface SkyDirection {
  readonly toSky: Vec3;
  /** Of its patch: the weight of the direction in an integral over solid angle. They add up to 2 pi. */
  readonly solidAngleSr: number;
  /** Index of its patch. */
  readonly patch: number;
}

export interface SkyDirectionsInput {
  /** 1 for Tregenza's 145 patches, n for 144 n^2 + 1 (Reinhart's subdivision). */
  readonly subdivision: number;
  readonly seed: number;
  readonly wave: number;
  /** Unit vector to the middle of the hemisphere; default straight up. */
  readonly toward?: Vec3;
}

/** One direction in every patch of a hemisphere, uniform in solid angle within it. */
export function skyDirections({
  subdivision,
  seed,
  wave,
  toward = up,
}: SkyDirectionsInput): readonly SkyDirection[] {
  const turn = turnTo(toward);
  return reinhartPatches(subdivision).map((patch, i) => ({
    toSky: turn(randomWithin(patch, seed, wave, i)),
    solidAngleSr: patch.solidAngleSr,
    patch: i,
  }));
}

function turnTo(pole: Vec3): (v: Vec3) => Vec3 {
  if (pole[0] === 0 && pole[2] === 0 && pole[1] > 0) return (v) => v;
  const right = anyPerpendicular(pole);
  const ahead = cross(right, pole);
  return (v) => add(add(scale(right, v[0]), scale(pole, v[1])), scale(ahead, v[2]));
}
