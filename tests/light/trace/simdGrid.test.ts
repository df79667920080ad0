import { describe, expect, it } from 'vitest';
import type { Receiver, Surface } from '../../../src/geometry/surface.ts';
import { add, distance, type Vec3 } from '../../../src/geometry/vec.ts';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';
import { parallelBeamTracer, plainBeamTracer } from '../../../src/light/trace/parallelBeam.ts';
import { traceWave } from '../../../src/light/trace/wave.ts';
import type { TraceDirection } from '../../../src/light/tracer.ts';
import { sampleIds } from '../../document/sampleFiles.ts';
import { waveOf } from '../cells.ts';
import { moved, movedReceiver } from './moves.ts';
import { realCanopy } from './realCanopy.ts';
import { anyDirection, sceneOf, stream } from './scene.ts';

/** Crossings as they are told. */
function told(trace: TraceDirection, toSky: Vec3): number[] {
  const crossings: number[] = [];
  trace(toSky, (receiver, surface, share) => crossings.push(receiver, surface, share));
  return crossings;
}

function directions(seed: number, count: number): Vec3[] {
  const draw = stream(seed);
  const axes: Vec3[] = [
    [0, 1, 0],
    [1, 0, 0],
    [0, 0, -1],
  ];
  return [...axes, ...Array.from({ length: count }, () => anyDirection(draw))];
}

/** How many crossings both tell, one after the other the same. */
function compared(
  surfaces: readonly Surface[],
  receivers: readonly Receiver[],
  ways: readonly Vec3[],
): number {
  const [fast, plain] = [parallelBeamTracer(surfaces, receivers), plainBeamTracer(surfaces, receivers)];
  let met = 0;
  for (const toSky of ways) {
    const got = told(fast, toSky);
    expect(got).toEqual(told(plain, toSky));
    met += got.length / 3;
  }
  return met;
}

describe('blades and stems of the point grid as WebAssembly', () => {
  it.each([871, 872, 873])('meet what their TypeScript twin meets, in its order (seed %i)', (seed) => {
    const size = { leaves: 170, stems: 20, triangles: 3, clouds: 1, openReceivers: 140 };
    const { surfaces, receivers } = sceneOf(seed, size);
    expect(compared(surfaces, receivers, directions(seed, 40))).toBeGreaterThan(3000);
  });

  it.each(sampleIds)('meet on a sample tree what their twin meets: %s (seed 874)', (id) => {
    const { surfaces, receivers } = realCanopy(id);
    expect(compared(surfaces, receivers, directions(874, 9))).toBeGreaterThan(1000);
  });

  it.each([
    [878, 0],
    [879, 700],
  ])('meet for a few receivers close together what brute force meets (seed %i, %i m away)', (seed, awayM) => {
    const { surfaces, receivers } = sceneOf(seed, {
      leaves: 300,
      stems: 90,
      triangles: 3,
      clouds: 0,
      openReceivers: 60,
    });
    const shift = (v: Vec3): Vec3 => add(v, [awayM, 0, -awayM / 3]);
    const still = (v: Vec3): Vec3 => v;
    const there = surfaces.map((surface) => moved(surface, still, shift));
    const middle = receivers.at(-1)?.point ?? [0, 0, 0];
    const few = receivers
      .filter(({ point }) => distance(point, middle) < 0.25)
      .map((receiver) => movedReceiver(receiver, still, shift));
    const [fast, slow] = [parallelBeamTracer(there, few), bruteForceTracer(there, few)];
    let met = 0;
    for (const toSky of directions(seed, 40)) {
      const pairs = (trace: TraceDirection): string[] => {
        const found: string[] = [];
        trace(toSky, (receiver, surface) => found.push(`${receiver} ${surface}`));
        return found.sort();
      };
      const got = pairs(fast);
      expect(got).toEqual(pairs(slow));
      met += got.length;
    }
    expect(few.length).toBeLessThan(60);
    expect(met).toBeGreaterThan(100);
  });

  it('find room for more crossings than were looked for (seed 875)', () => {
    const { surfaces } = sceneOf(875, { leaves: 90, stems: 0, triangles: 0, clouds: 0, openReceivers: 0 });
    const pile = Array.from({ length: 40 }, () => surfaces).flat();
    const draw = stream(876);
    const receivers = Array.from(
      { length: 700 },
      (): Receiver => ({
        point: [0.05 * draw(), -0.1, 0.05 * draw()],
        normal: [0, 1, 0],
        sides: 'one',
        onSurface: -1,
      }),
    );
    // Room is made for four crossings a receiver at first.
    expect(compared(pile, receivers, [[0, 1, 0]])).toBeGreaterThan(2 * 4 * receivers.length);
  });

  it('give the same wave, array by array (seed 877)', () => {
    const size = { leaves: 120, stems: 30, triangles: 4, clouds: 2, openReceivers: 75 };
    const input = { ...sceneOf(877, size), directions: waveOf(877, 0), ownerCount: 9 };
    expect(traceWave(input)).toEqual(traceWave(input, plainBeamTracer));
  });
});
