/** The directions of one wave: one at random in every cell. */
import { random01 } from '../../geometry/random.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import { direction } from '../../geometry/world.ts';
import type { Direction } from '../directions.ts';
import { sunDirection } from '../sun.ts';
import {
  beamColumns,
  beamRows,
  declinationAtRow,
  groundPatches,
  hourAngleAtColumn,
  skyPatches,
} from './cells.ts';
import type { Patch } from './patches.ts';

export interface WaveInput {
  readonly latitudeDeg: number;
  readonly seed: number;
  /** Number of the wave, from 0. */
  readonly wave: number;
}

/** What a random number is for, so that no two are the same. */
const skyWord = 11;
const groundWord = 12;
const beamWord = 13;

/**
 * One direction in every cell: uniform in solid angle within a patch of sky or ground, uniform in hour angle and in the
 * sun's longitude within a box of the beam. A beam direction below the level is left out, so a box that the sun never
 * reaches is never traced and one on the horizon is traced in some waves only. In the order sky, beam, ground.
 * Throws on a latitude that is none.
 */
export function waveDirections({ latitudeDeg, seed, wave }: WaveInput): readonly Direction[] {
  if (!(Math.abs(latitudeDeg) <= 90)) {
    throw new Error(`waveDirections: a latitude within 90 degrees is needed, got ${latitudeDeg}`);
  }
  const directions: Direction[] = skyPatches.map((patch, cell) => ({
    toSky: randomWithin(patch, seed, wave, skyWord, cell),
    kind: 'sky',
    cell,
  }));
  for (let cell = 0; cell < beamRows * beamColumns; cell++) {
    const row = Math.floor(cell / beamColumns) + random01(seed, wave, beamWord, cell, 0);
    const column = (cell % beamColumns) + random01(seed, wave, beamWord, cell, 1);
    const toSky = sunDirection(latitudeDeg, declinationAtRow(row), hourAngleAtColumn(column));
    if (toSky[1] > 0) directions.push({ toSky, kind: 'beam', cell });
  }
  groundPatches.forEach((patch, cell) => {
    const [x, y, z] = randomWithin(patch, seed, wave, groundWord, cell);
    directions.push({ toSky: [x, -y, z], kind: 'ground', cell });
  });
  return directions;
}

/** A direction within a patch, uniform in solid angle, fixed by the seed and the words. */
export function randomWithin(patch: Patch, seed: number, ...words: readonly number[]): Vec3 {
  const low = Math.sin((patch.lowDeg * Math.PI) / 180);
  const high = Math.sin((patch.highDeg * Math.PI) / 180);
  const sinElevation = low + (high - low) * random01(seed, ...words, 0);
  const bearing = patch.fromDeg + (patch.toDeg - patch.fromDeg) * random01(seed, ...words, 1);
  return direction(bearing, (Math.asin(sinElevation) * 180) / Math.PI);
}
