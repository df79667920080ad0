import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Receiver } from '../../src/geometry/surface.ts';
import { scale, type Vec3 } from '../../src/geometry/vec.ts';
import { irradiance, type SkyPiece, skyView } from '../../src/light/irradiance.ts';
import { waveOf } from './cells.ts';
import { grown, moved } from './trace/moves.ts';
import { sceneOf } from './trace/scene.ts';

const size = { leaves: 23, stems: 13, triangles: 3, clouds: 1, openReceivers: 15 };
const lightsOf = (seed: number) => waveOf(seed, 0).map(({ toSky }, i) => ({ toSky, energy: 1 + (i % 4) }));
const seeds = fc.integer({ min: 1, max: 1e6 });
const level = (r: Receiver): Receiver => (r.sides === 'one' ? { ...r, normal: [0, 1, 0] } : r);
const piecesOf = (seed: number): SkyPiece[] =>
  waveOf(seed, 0).map(({ toSky }) => ({ toSky, solidAngleSr: (2 * Math.PI) / 63 }));

/** A quarter turn clockwise seen from above: exact in binary. */
const quarter = ([x, y, z]: Vec3): Vec3 => [-z, y, x];

describe('irradiance', () => {
  it('sums energy by the cosine, both faces of a leaf counted', () => {
    const receivers: Receiver[] = [
      { point: [0, 0, 0], normal: [0, 1, 0], sides: 'one', onSurface: -1 },
      { point: [0, 0, 0], normal: [0, -1, 0], sides: 'both', onSurface: -1 },
    ];
    const lights = [
      { toSky: [0, 0.6, 0.8] as Vec3, energy: 5 },
      { toSky: [0.6, -0.8, 0] as Vec3, energy: 3 },
    ];
    const [sensor, leaf] = irradiance({ surfaces: [], receivers, lights });
    expect(sensor).toBeCloseTo(3, 12);
    expect(leaf).toBeCloseTo(3 + 2.4, 12);
  });

  it('never falls anywhere when anything is taken away (seed 501)', () => {
    fc.assert(
      fc.property(seeds, fc.nat(), (seed, which) => {
        const { surfaces, receivers } = sceneOf(seed, size);
        const gone = which % surfaces.length;
        const free = receivers.map((r) => ({ ...r, onSurface: -1 }));
        const lights = lightsOf(seed);
        const before = irradiance({ surfaces, receivers: free, lights });
        const after = irradiance({ surfaces: surfaces.toSpliced(gone, 1), receivers: free, lights });
        after.forEach((value, r) => {
          expect(value).toBeGreaterThanOrEqual(before[r] ?? Number.NaN);
        });
      }),
      { seed: 501, numRuns: 30 },
    );
  });

  it('counts only owners that stand, as if the others were not there (seed 502)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { surfaces, receivers } = sceneOf(seed, size);
        const free = receivers.map((r) => ({ ...r, onSurface: -1 }));
        const keep = Uint8Array.from({ length: 9 }, (_, owner) => (owner % 2 === 0 ? 1 : 0));
        const lights = lightsOf(seed);
        const standing = surfaces.filter(({ owner }) => keep[owner] === 1);
        expect(irradiance({ surfaces, receivers: free, lights, keep })).toEqual(
          irradiance({ surfaces: standing, receivers: free, lights }),
        );
      }),
      { seed: 502, numRuns: 20 },
    );
  });

  it('does not change when scene and sky turn together by a quarter (seed 503; rounding of sums only)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { surfaces, receivers } = sceneOf(seed, size);
        const lights = lightsOf(seed);
        const turned = irradiance({
          surfaces: surfaces.map((s) => moved(s, quarter)),
          receivers: receivers.map((r) => ({ ...r, point: quarter(r.point), normal: quarter(r.normal) })),
          lights: lights.map((l) => ({ ...l, toSky: quarter(l.toSky) })),
        });
        irradiance({ surfaces, receivers, lights }).forEach((value, r) => {
          expect(Math.abs((turned[r] ?? Number.NaN) - value)).toBeLessThan(1e-10);
        });
      }),
      { seed: 503, numRuns: 30 },
    );
  });

  it('does not change at all when every length doubles (seed 504)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { surfaces, receivers } = sceneOf(seed, size);
        const lights = lightsOf(seed);
        const larger = irradiance({
          surfaces: surfaces.map((s) => grown(s, 2)),
          receivers: receivers.map((r) => ({ ...r, point: scale(r.point, 2) })),
          lights,
        });
        irradiance({ surfaces, receivers, lights }).forEach((value, r) => {
          // Rounding of the halved extinction times the doubled path.
          expect(Math.abs((larger[r] ?? Number.NaN) - value)).toBeLessThan(1e-12);
        });
      }),
      { seed: 504, numRuns: 30 },
    );
  });

  it('refuses a keep-set that leaves out an owner', () => {
    const { surfaces, receivers } = sceneOf(506, size);
    const keep = new Uint8Array(2).fill(1);
    expect(() => irradiance({ surfaces, receivers, lights: [], keep })).toThrow(
      /^irradiance: keep needs an entry for owner \d, got 2 entries/,
    );
  });

  it('refuses energy that is no energy', () => {
    const lights = [{ toSky: [0, 1, 0] as Vec3, energy: Number.NaN }];
    expect(() => irradiance({ surfaces: [], receivers: [], lights })).toThrow(
      'irradiance: energy must be 0 or more',
    );
  });
});

describe('the sky view', () => {
  it('of a level sensor never passes 1 (seed 505)', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { surfaces, receivers } = sceneOf(seed, size);
        const sensors = receivers.filter((r) => r.sides === 'one').map(level);
        for (const share of skyView({ surfaces, receivers: sensors, pieces: piecesOf(seed) })) {
          expect(share).toBeLessThanOrEqual(1 + 1e-12);
          expect(share).toBeGreaterThanOrEqual(0);
        }
      }),
      { seed: 505, numRuns: 30 },
    );
  });

  it('refuses pieces that light nothing', () => {
    const pieces = [{ toSky: [0, -1, 0] as Vec3, solidAngleSr: 1 }];
    expect(() => skyView({ surfaces: [], receivers: [], pieces })).toThrow('skyView: the pieces must light');
  });
});
