import { describe, expect, test } from 'vitest';
import { skyView } from '../../../src/light/irradiance.ts';
import { skyDirections } from '../../../src/light/sky/skyDirections.ts';
import { checkCases } from '../checkCases.ts';
import { receivers, rootMeanSquare, sampling, slope, wall, wallView } from './answers.ts';

describe('sampling', () => {
  checkCases(sampling);

  test('our sky patches are as good as jittered rays: slope -0.75 on an edge (Mitchell 1996; 0.13)', () => {
    const counts = [1, 2, 3, 4].map((m) => 144 * m * m + 1);
    const got = slope(counts, (n) =>
      rootMeanSquare(60, (wave) => {
        const pieces = skyDirections({ subdivision: Math.sqrt((n - 1) / 144), seed: 85, wave });
        return (skyView({ surfaces: wall, receivers, pieces })[0] ?? Number.NaN) - wallView;
      }),
    );
    expect(Math.abs(got + 0.75)).toBeLessThan(0.13);
  });
});
