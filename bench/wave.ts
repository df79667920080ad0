/** Leaf waves of a synthetic tree. */
import type { LeafLedger, LeafWave } from '../src/light/leafLedger.ts';
import { waveDirections } from '../src/light/sky/waveDirections.ts';
import type { MakeLatticeCaster } from '../src/light/trace/lattice/caster.ts';
import { traceLeafWave } from '../src/light/trace/leafWave.ts';
import type { VaseTree } from './vaseTree.ts';

export const latitudeDeg = 43.7;

export interface WaveOptions {
  readonly spacingM: number;
  readonly seed: number;
  readonly makeCaster?: MakeLatticeCaster;
  /** Only every so many directions. */
  readonly everyDirection?: number;
}

export function leafWave(tree: VaseTree, wave: number, options: WaveOptions): LeafWave {
  const { spacingM, seed, makeCaster, everyDirection = 1 } = options;
  const directions = waveDirections({ latitudeDeg, seed, wave }).filter((_, d) => d % everyDirection === 0);
  const { surfaces, group, shootCount, ownerCount } = tree;
  const input = { surfaces, group, groupCount: shootCount, directions, ownerCount, spacingM, seed, wave };
  return traceLeafWave(input, makeCaster);
}

export function leafLedger(tree: VaseTree, waves: number, options: WaveOptions): LeafLedger {
  const { ownerCount, shootCount } = tree;
  const traced = Array.from({ length: waves }, (_, wave) => leafWave(tree, wave, options));
  return { ownerCount, groupCount: shootCount, waves: traced, seed: options.seed };
}
