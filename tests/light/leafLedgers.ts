/** Leaf ledgers of small scenes, for tests. */
import type { LeafLedger } from '../../src/light/leafLedger.ts';
import { type TraceLeafWaveInput, traceLeafWave } from '../../src/light/trace/leafWave.ts';
import { waveOf } from './cells.ts';

type Scene = Pick<TraceLeafWaveInput, 'surfaces' | 'group' | 'groupCount' | 'ownerCount' | 'seed'>;

export function tracedLeaves({ waveCount, ...scene }: Scene & { readonly waveCount: number }): LeafLedger {
  const { ownerCount, groupCount, seed } = scene;
  const waves = Array.from({ length: waveCount }, (_, wave) =>
    traceLeafWave({ ...scene, directions: waveOf(seed, wave), spacingM: 0.07, wave }),
  );
  return { ownerCount, groupCount, waves, seed };
}
