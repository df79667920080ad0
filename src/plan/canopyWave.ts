/** One wave of light through a canopy and what stands around it. */
import type { Surface } from '../geometry/surface.ts';
import type { Canopy } from '../growth/canopy.ts';
import { canopyReceivers } from '../growth/scene.ts';
import type { CellLight, Direction } from '../light/directions.ts';
import type { Wave } from '../light/ledger.ts';
import { waveDirections } from '../light/sky/waveDirections.ts';
import { traceWaveSteps } from '../light/trace/wave.ts';

export interface CanopyWaveInput {
  readonly canopy: Canopy;
  /** Those of the canopy (`canopySurfaces`) first, then what is fixed. */
  readonly surfaces: readonly Surface[];
  readonly latitudeDeg: number;
  readonly seed: number;
  readonly wave: number;
  /** Nodes alone, or nodes and then one point on each leaf. */
  readonly receivers: 'nodes' | 'nodes and leaves';
  /** The one light the wave is wanted for: directions that bring nothing in it are not traced. All when left out. */
  readonly onlyFor?: CellLight;
}

/** Yields the share done of this wave, 0 to 1. */
export function canopyWaveSteps(input: CanopyWaveInput): Generator<number, Wave, void> {
  const { canopy, surfaces, latitudeDeg, seed, wave, onlyFor } = input;
  const all = canopyReceivers(canopy, { seed, wave });
  const isWanted = ({ kind, cell }: Direction): boolean => {
    if (input.receivers === 'nodes' && kind === 'ground') return false;
    return onlyFor === undefined || (onlyFor[kind][cell] ?? 0) > 0;
  };
  return traceWaveSteps({
    surfaces,
    receivers: input.receivers === 'nodes' ? all.slice(0, canopy.nodes.length) : all,
    directions: waveDirections({ latitudeDeg, seed, wave }).filter(isWanted),
    ownerCount: canopy.owners.length,
  });
}
