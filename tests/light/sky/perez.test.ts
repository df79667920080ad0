import { describe, expect, test } from 'vitest';
import {
  type MeasuredSky,
  perezLuminance,
  skyBrightness,
  skyClearness,
} from '../../../src/light/sky/perez.ts';
import { airMass } from '../../../src/season/clearSky.ts';

const rad = Math.PI / 180;
const sky = (sunZenithDeg: number, diffuseWM2: number, beamNormalWM2: number): MeasuredSky => ({
  sunZenithDeg,
  diffuseWM2,
  beamNormalWM2,
  aboveWM2: 1367,
});
const clear = sky(41.3, 97, 861);
const broken = sky(52.7, 243, 312);
const dull = sky(47.9, 148, 0);

/** Integral of the brightness over the sky, on the level or square to each direction. */
function integral(measured: MeasuredSky, onLevel: boolean): number {
  const luminance = perezLuminance(measured);
  const [n, m] = [360, 360];
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const sine = (i + 0.5) / n;
    const zenith = Math.acos(sine);
    for (let k = 0; k < m; k++) {
      const bearing = (2 * Math.PI * (k + 0.5)) / m;
      const sun = measured.sunZenithDeg * rad;
      const cosAngle = Math.cos(sun) * sine + Math.sin(sun) * Math.sin(zenith) * Math.cos(bearing);
      const value = luminance(zenith / rad, Math.acos(Math.min(1, Math.max(-1, cosAngle))) / rad);
      sum += (value * (onLevel ? sine : 1) * 2 * Math.PI) / n / m;
    }
  }
  return sum;
}

describe('the all-weather sky', () => {
  test('tells clear, broken and dull skies by the light measured', () => {
    expect(skyClearness(clear)).toBeGreaterThan(6.2);
    expect(skyClearness(broken)).toBeGreaterThan(1.5);
    expect(skyClearness(broken)).toBeLessThan(2.8);
    expect(skyClearness(dull)).toBe(1);
  });

  test('takes its clearness and brightness from equations 1 and 2', () => {
    const low = 1.041 * (52.7 * rad) ** 3;
    expect(skyClearness(broken)).toBeCloseTo(((243 + 312) / 243 + low) / (1 + low), 12);
    expect(skyBrightness(broken)).toBeCloseTo((airMass(52.7) * 243) / 1367, 12);
    expect(skyBrightness(sky(52.7, 61, 43))).toBe(0.2);
    expect(skyBrightness({ ...clear, diffuseWM2: 3 })).toBe(0.01);
  });

  test('is brightest at the sun when clear, and a ring of 25 degrees holds a large part of its light', () => {
    const luminance = perezLuminance(clear);
    const atSun = luminance(41.3, 0);
    expect(atSun).toBeGreaterThan(5 * luminance(41.3, 60));
    expect(luminance(88, 90)).toBeGreaterThan(luminance(40, 90));
  });

  test('is brighter at the zenith than at the horizon when dull, with next to no ring', () => {
    const luminance = perezLuminance(dull);
    expect(luminance(0, 47.9)).toBeGreaterThan(1.5 * luminance(89, 47.9));
    expect(luminance(47.9, 0) / luminance(47.9, 95)).toBeLessThan(1.6);
  });

  test.each([
    ['clear', clear],
    ['broken', broken],
    ['dull', dull],
    ['sun at the horizon', sky(90, 31, 17)],
    ['hazy', sky(29.1, 391, 452)],
  ])(
    'is never below 0 and has light on the level between that of a bright horizon and of a bright zenith: %s',
    (_, measured) => {
      const luminance = perezLuminance(measured);
      for (let zenith = 0; zenith <= 90; zenith += 7.5)
        for (let angle = 0; angle <= 180; angle += 9)
          expect(luminance(zenith, angle)).toBeGreaterThanOrEqual(0);
      const meanSine = integral(measured, true) / integral(measured, false);
      expect(meanSine).toBeGreaterThan(0.3);
      expect(meanSine).toBeLessThan(0.75);
    },
  );

  test('changes from kind to kind of sky without a leap of more than a third of the mean', () => {
    // The fits were made kind by kind; what they leave at their limits is the model's own.
    for (const limit of [1.23, 1.5, 1.95, 2.8, 4.5, 6.2]) {
      const beam = (clearness: number): number => {
        const low = 1.041 * (45 * rad) ** 3;
        return 180 * (clearness * (1 + low) - low - 1);
      };
      const side = (off: number): number[] => {
        const measured = sky(45, 180, beam(limit + off));
        const whole = integral(measured, true);
        const luminance = perezLuminance(measured);
        return [20, 45, 70].map((zenith) => luminance(zenith, 75) / whole);
      };
      const [below, above] = [side(-1e-6), side(1e-6)];
      below.forEach((value, i) => {
        expect(Math.abs((above[i] ?? Number.NaN) / value - 1)).toBeLessThan(0.34);
      });
    }
  });

  test('refuses a sky without light and a sun below the level', () => {
    expect(() => perezLuminance(sky(40, 0, 0))).toThrow('perezLuminance');
    expect(() => perezLuminance(sky(91, 40, 0))).toThrow('perezLuminance');
    expect(() => perezLuminance(sky(Number.NaN, 40, 0))).toThrow('perezLuminance');
  });
});
