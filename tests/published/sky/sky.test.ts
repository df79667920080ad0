import { describe, expect, test } from 'vitest';
import { direction } from '../../../src/geometry/world.ts';
import { moonSpencer, uniformSkyOnTilt } from '../../../src/light/sky/luminance.ts';
import { checkCases } from '../checkCases.ts';
import { irradianceOf, moonLevel, sky } from './answers.ts';

describe('skies against published values', () => {
  checkCases(sky);

  const tilts = [0, 13, 40, 90, 135, 170];
  const tilted = tilts.map((tiltDeg) => direction(97, 90 - tiltDeg));

  test('a tilted sensor gets from a uniform sky what the closed form says (0.0005: rings and sectors)', () => {
    irradianceOf(() => 1 / Math.PI, tilted).forEach((got, i) => {
      expect(got).toBeCloseTo(uniformSkyOnTilt(tilts[i] ?? Number.NaN), 3);
    });
  });

  test('a tilted sensor gets from an overcast sky what Steven and Unsworth 1980 say (from memory; 0.0005)', () => {
    // Q. J. R. Meteorol. Soc. 106:57, brightness 1 + b sin(elevation) with b = 2; at 90 degrees it is the 0.396 above.
    irradianceOf(moonSpencer, tilted).forEach((got, i) => {
      const t = ((tilts[i] ?? Number.NaN) * Math.PI) / 180;
      const bow = Math.sin(t) - t * Math.cos(t) - Math.PI * Math.sin(t / 2) ** 2;
      expect(got / moonLevel).toBeCloseTo(Math.cos(t / 2) ** 2 + (4 / (7 * Math.PI)) * bow, 3);
    });
  });
});
