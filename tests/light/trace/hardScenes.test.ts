import { describe, expect, it } from 'vitest';
import type { Receiver, Stem, Surface } from '../../../src/geometry/surface.ts';
import { add, lerp, scale, type Vec3 } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';
import { parallelBeamTracer } from '../../../src/light/trace/parallelBeam.ts';
import type { MakeTracer } from '../../../src/light/tracer.ts';
import { grown, moved } from './moves.ts';
import { anyDirection, sceneOf, stream } from './scene.ts';

const size = { leaves: 60, stems: 35, triangles: 6, clouds: 2, openReceivers: 80 };
const tracers = [
  ['brute force', bruteForceTracer],
  ['parallel beam', parallelBeamTracer],
] as const;

function met(
  makeTracer: MakeTracer,
  { surfaces, receivers }: { surfaces: readonly Surface[]; receivers: readonly Receiver[] },
  directions: readonly Vec3[],
): string[] {
  const trace = makeTracer(surfaces, receivers);
  return directions.flatMap((toSky, d) => {
    const found: string[] = [];
    trace(toSky, (receiver, surface) => found.push(`${d} ${receiver} ${surface}`));
    return found.sort();
  });
}

const anyhow = (seed: number, count: number): Vec3[] => {
  const draw = stream(seed);
  return Array.from({ length: count }, () => anyDirection(draw));
};

describe.each(tracers)('far away, tiny and huge scenes: %s', (_, makeTracer) => {
  const here = sceneOf(621, size);
  const directions = anyhow(622, 70);
  const expected = met(bruteForceTracer, here, directions);

  // A shift costs 1e-14 of a metre; a ray is that near to an edge once in some 1e10.
  it.each([
    [50, 0, -3],
    [-37, 120, 50],
    [0, 0, 8000],
  ])('the same rays meet the same things %f m east, %f up, %f south (seed 621)', (x, y, z) => {
    const place = (v: Vec3): Vec3 => add(v, [x, y, z]);
    const scene = {
      surfaces: here.surfaces.map((s) => moved(s, (v) => v, place)),
      receivers: here.receivers.map((r) => ({ ...r, point: place(r.point) })),
    };
    expect(met(makeTracer, scene, directions)).toEqual(expected);
  });

  it.each([1e-6, 0.013, 731, 1e6])('and with all lengths times %f (seed 621)', (factor) => {
    const scene = {
      surfaces: here.surfaces.map((s) => grown(s, factor)),
      receivers: here.receivers.map((r) => ({ ...r, point: scale(r.point, factor) })),
    };
    expect(expected.length).toBeGreaterThan(2000);
    expect(met(makeTracer, scene, directions)).toEqual(expected);
  });
});

describe('rays near the level and below it', () => {
  it('meet the same in both tracers, within 1e-7 degrees of the level too (seed 631)', () => {
    const scene = sceneOf(631, size);
    const seeing = {
      ...scene,
      receivers: scene.receivers.map((r): Receiver => ({ ...r, sides: 'both' })),
    };
    const directions = [1e-7, -1e-7, 0.003, -0.003, 0, -41, -89.99].flatMap((elevation) =>
      [0, 71.3, 90, 180, 262.9].map((bearing) => direction(bearing, elevation)),
    );
    const got = met(parallelBeamTracer, seeing, directions);
    expect(got.length).toBeGreaterThan(1500);
    expect(got).toEqual(met(bruteForceTracer, seeing, directions));
  });
});

describe.each(tracers)('receivers inside wood: %s', (_, makeTracer) => {
  it('are in the dark from every side, whatever the taper (seed 641)', () => {
    const { surfaces } = sceneOf(641, { ...size, leaves: 0, triangles: 0, clouds: 0 });
    const stems = surfaces.filter((s): s is Stem => s.shape === 'stem');
    const draw = stream(642);
    stems.forEach((stem) => {
      const along = draw();
      const radius = stem.fromRadiusM + (stem.toRadiusM - stem.fromRadiusM) * along;
      const point = add(lerp(stem.from, stem.to, along), scale(anyDirection(draw), 0.99 * radius * draw()));
      const inside: Receiver = { point, normal: [0, 1, 0], sides: 'both', onSurface: -1 };
      const directions = [...anyhow(643, 12), [0, 1, 0], [0, 0, -1]] as Vec3[];
      expect(met(makeTracer, { surfaces: [stem], receivers: [inside] }, directions)).toHaveLength(14);
    });
  });
});
