/** Small waves of directions and a light for them, for tests. */

import { random01 } from '../../src/geometry/random.ts';
import type { Receiver, Surface } from '../../src/geometry/surface.ts';
import type { Vec3 } from '../../src/geometry/vec.ts';
import type { CellLight, Direction } from '../../src/light/directions.ts';
import type { Ledger } from '../../src/light/ledger.ts';
import { traceWave } from '../../src/light/trace/wave.ts';

export const skyRows = 7;
export const skyColumns = 9;
export const beamBoxes = 11;
export const groundPieces = 5;

/** A direction from its height (sine of the elevation) and its turn round the upright, 0 to 1. */
function at(height: number, turn: number): Vec3 {
  const level = Math.sqrt(1 - height * height);
  return [level * Math.cos(2 * Math.PI * turn), height, level * Math.sin(2 * Math.PI * turn)];
}

/** One direction in each cell: sky in equal solid angles, beam along an arc, ground below the level. */
export function waveOf(seed: number, wave: number): Direction[] {
  const draw = (...words: number[]): number => random01(seed, wave, ...words);
  const directions: Direction[] = [];
  for (let row = 0; row < skyRows; row++) {
    for (let column = 0; column < skyColumns; column++) {
      const cell = row * skyColumns + column;
      const toSky = at((row + draw(cell, 1)) / skyRows, (column + draw(cell, 2)) / skyColumns);
      directions.push({ toSky, kind: 'sky', cell });
    }
  }
  for (let cell = 0; cell < beamBoxes; cell++) {
    const across = (cell + draw(cell, 3)) / beamBoxes;
    const toSky = at(0.2 + 0.7 * Math.sin(Math.PI * across), 0.1 + across * 0.4);
    directions.push({ toSky, kind: 'beam', cell });
  }
  for (let cell = 0; cell < groundPieces; cell++) {
    directions.push({
      toSky: at(-draw(cell, 4), (cell + draw(cell, 5)) / groundPieces),
      kind: 'ground',
      cell,
    });
  }
  return directions;
}

/** Even sky of 11 units on the level, beam of 17, ground as bright as a level reflectance of `groundReflectance`. */
export function lightOf(groundReflectance: number): CellLight {
  const skyCells = skyRows * skyColumns;
  const [diffuse, beam] = [11, 17];
  return {
    sky: new Float64Array(skyCells).fill((2 * diffuse) / skyCells),
    beam: Float64Array.from({ length: beamBoxes }, (_, cell) => 1 + (cell % 3)),
    ground: new Float64Array(groundPieces).fill((2 * groundReflectance * (diffuse + beam)) / groundPieces),
    openSkyParMolM2Day: diffuse + beam,
    openBeamParMolM2Day: beam,
    openDiffuseParMolM2Day: diffuse,
  };
}

export function ledgerOf(
  surfaces: readonly Surface[],
  receivers: readonly Receiver[],
  { seed, waves, ownerCount }: { seed: number; waves: number; ownerCount: number },
): Ledger {
  const traced = Array.from({ length: waves }, (_, wave) =>
    traceWave({ surfaces, receivers, directions: waveOf(seed, wave), ownerCount }),
  );
  return { ownerCount, receiverCount: receivers.length, waves: traced, seed };
}
