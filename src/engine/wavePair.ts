/** A wave of light at the nodes and one on the leaves, which go together in all answers about light. */
import type { LeafWave } from '../light/leafLedger.ts';
import type { Wave } from '../light/ledger.ts';
import type { WaveTask } from '../plan/canopyWave.ts';
import { fetchTask, type JobSteps } from '../plan/errand.ts';

export interface WavePair {
  readonly nodes: WaveTask & { readonly at: 'nodes' };
  readonly leaves: WaveTask & { readonly at: 'leaves' };
}

export interface TracedPair {
  readonly nodes: Wave;
  readonly leaves: LeafWave;
}

export const wavePair = (task: Omit<WaveTask, 'at'>): WavePair => ({
  nodes: { ...task, at: 'nodes' },
  leaves: { ...task, at: 'leaves' },
});

/** Pairs that may be begun before they are fetched: enough to keep all threads busy, few enough not to pile up. */
const mostAhead = 8;

/** Fetches pair i; those after it may be begun already. The job is then `to` done. */
export function* fetchPair(
  pairs: readonly WavePair[],
  i: number,
  from: number,
  to: number,
): JobSteps<TracedPair> {
  const { nodes, leaves } = pairs[i] as WavePair;
  const ahead = pairs.slice(i + 1, i + 1 + mostAhead).flatMap((pair) => [pair.nodes, pair.leaves]);
  const [doing, middle] = ['Following the light', (from + to) / 2];
  return {
    nodes: yield* fetchTask(nodes, [leaves, ...ahead], { doing, from, to: middle }),
    leaves: yield* fetchTask(leaves, ahead, { doing, from: middle, to }),
  };
}
