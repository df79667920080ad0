/** The light that patches receive, so that they can throw it back in any weather. */
import { random01 } from '../../geometry/random.ts';
import type { Receiver, Surface } from '../../geometry/surface.ts';
import { add, scale } from '../../geometry/vec.ts';
import type { Direction, FaceLight } from '../directions.ts';
import { nodeTable } from '../nodeTable.ts';
import { parallelBeamTracer } from '../trace/parallelBeam.ts';
import { traceWave } from '../trace/wave.ts';
import type { MakeTracer } from '../tracer.ts';
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
  /** As they are traced, where that is not as they are in the world. */
  readonly traced?: readonly Direction[];
  readonly ownerCount: number;
  readonly seed: number;
  readonly wave: number;
}

/**
 * Traces random points of every patch towards all directions of a wave, everything standing. Points of the ground that something covers,
 * a pot, say, do not count: nothing sees them.
 */
export function faceLight(input: FaceLightInput, makeTracer: MakeTracer = parallelBeamTracer): FaceLight {
  const { surfaces, patches, directions, traced = directions, ownerCount, seed, wave } = input;
  const receivers = patches.flatMap(({ corner, along, across, normal, surface }, p) =>
    Array.from({ length: points }, (_, k): Receiver => {
      const [a, b] = [random01(seed, wave, pointWord, p, k, 0), random01(seed, wave, pointWord, p, k, 1)];
      const point = add(corner, add(scale(along, a), scale(across, b)));
      return { point, normal, sides: 'one', onSurface: surface };
    }),
  );
  const waves = [traceWave({ surfaces, receivers, directions: traced, ownerCount }, makeTracer)];
  const table = nodeTable({ ownerCount, receiverCount: receivers.length, waves, seed });
  const passed = table.waves[0]?.passed ?? new Float64Array();
  return { patchCount: patches.length, directions, received: meansOf(patches, passed) };
}

/** @param passed entry direction * number of points + point */
function meansOf(patches: readonly Patch[], passed: Float64Array): Float64Array {
  const count = patches.length * points;
  const means = new Float64Array(passed.length / points);
  const isLit = new Uint8Array(count);
  passed.forEach((value, i) => {
    if (value > 0) isLit[i % count] = 1;
  });
  patches.forEach(({ surface }, p) => {
    const mine = Array.from({ length: points }, (_, k) => p * points + k);
    const open = surface < 0 ? mine.filter((point) => isLit[point] === 1) : mine;
    if (open.length === 0) return;
    for (let d = 0; d < passed.length / count; d++) {
      const sum = open.reduce((part, point) => part + (passed[d * count + point] as number), 0);
      means[d * patches.length + p] = sum / open.length;
    }
  });
  return means;
}
