import { beforeAll, describe, expect, test } from 'vitest';
import { checkCases } from '../checkCases.ts';
import {
  beamThrough,
  canopy,
  four,
  half,
  levelSky,
  one,
  sphericalBeams,
  sphericalSky,
  three,
  two,
} from './answers.ts';
import { level as levelLeaves } from './poses.ts';
import { beamPassed, quickStream } from './slab.ts';

describe('canopies and shade', () => {
  beforeAll(() => {
    sphericalSky();
    sphericalBeams();
    levelSky();
  }, 120_000);

  checkCases(canopy);

  test('level leaves pass exp(-L) of a beam too, at any elevation (Monsi and Saeki 1953; 100 slabs: 0.003)', () => {
    for (const [index, elevation] of [
      [0.7, 25],
      [1.6, 52],
    ] as const) {
      expect(Math.abs(beamThrough(74, levelLeaves, index, elevation) - Math.exp(-index))).toBeLessThan(0.003);
    }
  }, 30_000);

  test('the slabs get thinner with every layer taken away, and the same for both poses only at the zenith', () => {
    const [spherical, level] = [sphericalSky(), levelSky().untouched];
    for (const passed of [spherical, level]) expect(passed).toEqual(passed.toSorted((a, b) => b - a));
    expect((spherical[half] ?? 0) - (level[half] ?? 0)).toBeGreaterThan(0.03);
    expect((spherical[three] ?? 0) - (level[three] ?? 0)).toBeGreaterThan(0.05);
  });

  test('scattering leaves pass 1.11, 1.23 and 1.52 times what black ones do at L 1, 2, 4 (Goudriaan 1977, from memory)', () => {
    // Level leaves, reflectance and transmittance 0.1. The tolerance is set by the random slabs: 2 % of exp(-4).
    const { untouched, arriving } = levelSky();
    const ratios = [one, two, four].map((i) => (arriving[i] ?? Number.NaN) / (untouched[i] ?? Number.NaN));
    [1.11, 1.23, 1.52].forEach((published, i) => {
      expect(Math.abs((ratios[i] ?? Number.NaN) / published - 1)).toBeLessThan(0.02);
    });
  });

  test('leaves that hang in threes above one another pass exp(-L / 3) of a beam from straight above (0.003, seed 79)', () => {
    const draw = quickStream(79);
    const slab = { draw, pose: levelLeaves, layers: [1.5], leafAreaM2: 0.001, transmittance: 0, clump: 3 };
    let sum = 0;
    for (let i = 0; i < 100; i++) sum += beamPassed(slab, [0, 1, 0]).arriving[0] ?? Number.NaN;
    expect(Math.abs(sum / 100 - Math.exp(-0.5))).toBeLessThan(0.003);
  }, 30_000);
});
