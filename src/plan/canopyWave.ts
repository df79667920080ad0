/** One wave of light through a canopy and what stands around it. */
import type { Surface } from '../geometry/surface.ts';
import type { Canopy } from '../growth/canopy.ts';
import { canopyReceivers } from '../growth/scene.ts';
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
}

/** Yields the share done of this wave, 0 to 1. */
export function canopyWaveSteps(input: CanopyWaveInput): Generator<number, Wave, void> {
  const { canopy, surfaces, latitudeDeg, seed, wave } = input;
  const all = canopyReceivers(canopy, { seed, wave });
  return traceWaveSteps({
    surfaces,
    receivers: input.receivers === 'nodes' ? all.slice(0, canopy.nodes.length) : all,
    directions: waveDirections({ latitudeDeg, seed, wave }),
    ownerCount: canopy.owners.length,
  });
}
