/** The light that patches receive, so that they can throw it back in any weather. */
import { random01 } from '../../geometry/random.ts';
import type { Receiver, Surface } from '../../geometry/surface.ts';
import { add, scale } from '../../geometry/vec.ts';
import type { Direction, FaceLight } from '../directions.ts';
import { nodeTable } from '../nodeTable.ts';
import { traceWave } from '../trace/wave.ts';
import type { Patch } from './patches.ts';

/** What the random numbers are for; no other use of a wave's seed has this word. */
const pointWord = 51;
/** Points of each patch in a wave. */
const points = 2;

export interface FaceLightInput {
  readonly surfaces: readonly Surface[];
  readonly patches: readonly Patch[];
  /** All of the wave, ground too. */
  readonly directions: readonly Direction[];
  readonly ownerCount: number;
  readonly seed: number;
  readonly wave: number;
}

/** Traces random points of every patch towards all directions of a wave, everything standing. */
export function faceLight(input: FaceLightInput): FaceLight {
  const { surfaces, patches, directions, ownerCount, seed, wave } = input;
  const receivers = patches.flatMap(({ corner, along, across, normal, surface }, p) =>
    Array.from({ length: points }, (_, k): Receiver => {
      const [a, b] = [random01(seed, wave, pointWord, p, k, 0), random01(seed, wave, pointWord, p, k, 1)];
      const point = add(corner, add(scale(along, a), scale(across, b)));
      return { point, normal, sides: 'one', onSurface: surface };
    }),
  );
  const traced = traceWave({ surfaces, receivers, directions, ownerCount });
  const ledger = { ownerCount, receiverCount: receivers.length, waves: [traced], seed };
  const group = Int32Array.from(receivers, (_, r) => Math.floor(r / points));
  const { waves } = nodeTable(ledger, { count: patches.length, group });
  return { patchCount: patches.length, directions, received: waves[0]?.passed ?? new Float64Array() };
}
