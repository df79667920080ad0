/** One wave of light through a canopy and what stands around it. */
import type { Surface } from '../geometry/surface.ts';
import type { Canopy } from '../growth/canopy.ts';
import { nodeReceivers } from '../growth/scene.ts';
import type { CellLight, Direction } from '../light/directions.ts';
import type { LeafWave } from '../light/leafLedger.ts';
import type { Wave } from '../light/ledger.ts';
import { waveDirections } from '../light/sky/waveDirections.ts';
import { traceLeafWaveSteps } from '../light/trace/leafWave.ts';
import { traceWaveSteps } from '../light/trace/wave.ts';

export interface CanopyWaveInput {
  readonly canopy: Canopy;
  /** Those of the canopy (`canopySurfaces`) first, then what is fixed. */
  readonly surfaces: readonly Surface[];
  readonly latitudeDeg: number;
  readonly seed: number;
  readonly wave: number;
  /** The one light the wave is wanted for: directions that bring nothing in it are not traced. All when left out. */
  readonly onlyFor?: CellLight;
}

function directionsOf({ latitudeDeg, seed, wave, onlyFor }: CanopyWaveInput): readonly Direction[] {
  const all = waveDirections({ latitudeDeg, seed, wave });
  return onlyFor === undefined ? all : all.filter(({ kind, cell }) => (onlyFor[kind][cell] ?? 0) > 0);
}

/**
 * A wave of rays from the canopy's nodes, level sensors, which the ground never lights. Yields the share done of this
 * wave, 0 to 1.
 */
export function canopyWaveSteps(input: CanopyWaveInput): Generator<number, Wave, void> {
  const { canopy, surfaces } = input;
  return traceWaveSteps({
    surfaces,
    receivers: nodeReceivers(canopy),
    directions: directionsOf(input).filter(({ kind }) => kind !== 'ground'),
    ownerCount: canopy.owners.length,
  });
}

/**
 * Distance of the rays in shares of the root of the mean leaf's area: about 1.4 rays reach a leaf from each direction. Our
 * choice: the error of a shoot's leaf light over eight waves is then that of its nodes' light.
 */
const spacingShare = 0.6;
/** Hits of a wave, at most; four bytes each. Larger trees get wider lattices and have more leaves on a shoot's share. */
const mostHits = 4e6;

function spacingM({ leaves }: Canopy, directionCount: number): number {
  const areaM2 = leaves.reduce((sum, leaf) => sum + leaf.areaM2, 0);
  if (areaM2 === 0) return 1;
  // Leaves at random show half their area.
  const hitsTimesM2 = (areaM2 / 2) * directionCount;
  return Math.max(spacingShare * Math.sqrt(areaM2 / leaves.length), Math.sqrt(hitsTimesM2 / mostHits));
}

/** A wave of light on the canopy's leaves; groups are `canopy.shoots`. Yields the share done of this wave, 0 to 1. */
export function leafWaveSteps(input: CanopyWaveInput): Generator<number, LeafWave, void> {
  const { canopy, surfaces, seed, wave } = input;
  const directions = directionsOf(input);
  const shootOf = new Map(canopy.shoots.map(({ owner }, s) => [owner, s]));
  return traceLeafWaveSteps({
    surfaces,
    group: Int32Array.from(surfaces, (_, i) => shootOf.get(canopy.leaves[i]?.owner ?? -1) ?? -1),
    groupCount: canopy.shoots.length,
    directions,
    ownerCount: canopy.owners.length,
    spacingM: spacingM(canopy, directions.length),
    seed,
    wave,
  });
}
