import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';
import { parallelBeamTracer, plainBeamTracer } from '../../../src/light/trace/parallelBeam.ts';
import type { TraceDirection } from '../../../src/light/tracer.ts';
import { anyDirection, type SceneSize, sceneOf, stream } from './scene.ts';

/** All crossings of a direction as sorted [receiver, surface, share]. */
function crossings(trace: TraceDirection, toSky: Vec3): [number, number, number][] {
  const found: [number, number, number][] = [];
  trace(toSky, (receiver, surface, share) => found.push([receiver, surface, share]));
  return found.sort((p, q) => p[0] - q[0] || p[1] - q[1]);
}

const scenes: [number, SceneSize][] = [
  [101, { leaves: 70, stems: 40, triangles: 8, clouds: 2, openReceivers: 90 }],
  [202, { leaves: 0, stems: 90, triangles: 0, clouds: 0, openReceivers: 170 }],
  [303, { leaves: 40, stems: 0, triangles: 30, clouds: 5, openReceivers: 1 }],
  [404, { leaves: 3, stems: 2, triangles: 1, clouds: 1, openReceivers: 7 }],
];
const axes: Vec3[] = [
  [0, 1, 0],
  [0, -1, 0],
  [1, 0, 0],
  [0, 0, -1],
  [0, 0, 1],
  [0.6, 0.8, 0],
];

describe('the parallel-beam tracer', () => {
  it.each(scenes)('meets exactly what brute force meets, ray by ray (seed %i)', (seed, size) => {
    const { surfaces, receivers } = sceneOf(seed, size);
    const slow = bruteForceTracer(surfaces, receivers);
    const both = [parallelBeamTracer(surfaces, receivers), plainBeamTracer(surfaces, receivers)];
    const draw = stream(seed + 1);
    const directions = [...axes, ...Array.from({ length: 60 }, () => anyDirection(draw))];
    let met = 0;
    for (const toSky of directions) {
      const expected = crossings(slow, toSky);
      for (const fast of both) {
        const got = crossings(fast, toSky);
        expect(got.map(([r, s]) => [r, s])).toEqual(expected.map(([r, s]) => [r, s]));
        got.forEach(([, , share], i) => {
          expect(share).toBeCloseTo(expected[i]?.[2] ?? Number.NaN, 10);
        });
      }
      met += expected.length;
    }
    expect(met).toBeGreaterThan(size.openReceivers);
  });
});
