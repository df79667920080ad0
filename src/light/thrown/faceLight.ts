/** The light that patches receive, so that they can throw it back in any weather. */
import { random01 } from '../../geometry/random.ts';
import { fixedOwner, opaque, type Receiver, type Surface } from '../../geometry/surface.ts';
import { add } from '../../geometry/vec.ts';
import type { Direction, FaceLight } from '../directions.ts';
import { parallelBeamTracer } from '../trace/parallelBeam.ts';
import { checkOwners, receiverCosine } from '../trace/wave.ts';
import type { MakeTracer, TraceDirection } from '../tracer.ts';
import { exchange } from './exchange.ts';
import { type Patch, pointOf } from './patches.ts';

/** What the random numbers are for; no other use of a wave's seed has these words. */
const [pointWord, zoneWord] = [51, 53];
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

/** A little below the ground, so that the zones on it are not in the plate. */
const plateM = -1e-6;

/** Zones of the ground as a dark plate: what comes from them to walls is counted between the patches. */
function plates(patches: readonly Patch[]): Surface[] {
  return patches
    .filter(({ surface }) => surface < 0)
    .map(({ corner, along, across }): Surface => {
      const low = add(corner, [0, plateM, 0]);
      const far = add(low, along);
      const [c, d] = [add(far, across), add(low, across)];
      return { shape: 'mesh', owner: fixedOwner, optics: opaque, triangles: [low, far, c, low, c, d].flat() };
    });
}

/** Light that reaches points for light of 1 on a surface turned straight at each direction: entry direction * number of points + point. */
function passedTo(
  points: readonly Receiver[],
  directions: readonly Direction[],
  trace: TraceDirection,
): Float64Array {
  const passed = new Float64Array(directions.length * points.length);
  directions.forEach(({ toSky }, d) => {
    const first = d * points.length;
    points.forEach((point, p) => {
      passed[first + p] = receiverCosine(point, toSky);
    });
    trace(toSky, (p, _, share) => {
      passed[first + p] = (passed[first + p] as number) * share;
    });
  });
  return passed;
}

/**
 * Traces random points of every patch towards all directions of a wave, everything standing. Points of the ground that something covers,
 * a pot, say, do not count: nothing sees them. Walls send light to each other, to the ground and get it from there.
 */
export function faceLight(input: FaceLightInput, makeTracer: MakeTracer = parallelBeamTracer): FaceLight {
  const { patches, directions, traced = directions, ownerCount, seed, wave } = input;
  const wallCount = patches.filter(({ surface }) => surface >= 0).length;
  const hasWalls = wallCount > 0;
  const surfaces = hasWalls ? [...input.surfaces, ...plates(patches)] : input.surfaces;
  const receivers = patches.flatMap((patch, p) =>
    Array.from({ length: points }, (_, k): Receiver => {
      // The ground has the same points whatever walls there are.
      const own = patch.surface < 0 ? [zoneWord, p - wallCount] : [pointWord, p];
      const [a, b] = [random01(seed, wave, ...own, k, 0), random01(seed, wave, ...own, k, 1)];
      return { point: pointOf(patch, a, b), normal: patch.normal, sides: 'one', onSurface: patch.surface };
    }),
  );
  checkOwners(surfaces, ownerCount);
  const passed = passedTo(receivers, traced, makeTracer(surfaces, receivers));
  const firstPoints = patches.map((_, p) => (receivers[p * points] as Receiver).point);
  return {
    patchCount: patches.length,
    directions,
    received: meansOf(patches, passed),
    reflectance: Float64Array.from(patches, ({ reflectance }) => reflectance),
    between: hasWalls ? exchange(patches, firstPoints, input.surfaces) : null,
  };
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
