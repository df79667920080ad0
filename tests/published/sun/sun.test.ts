import { describe, expect, test } from 'vitest';
import { origin } from '../../../src/geometry/vec.ts';
import { bearingDeg, direction, elevationDeg } from '../../../src/geometry/world.ts';
import { irradiance } from '../../../src/light/irradiance.ts';
import { sunCoordinates } from '../../../src/light/sky/sunCoordinates.ts';
import { sunDirection } from '../../../src/light/sun.ts';
import { dayLengthH, sunsetHourAngleRad } from '../../../src/season/extraterrestrial.ts';
import { checkCases } from '../checkCases.ts';
import { sun } from './answers.ts';

describe('the sun against published values', () => {
  checkCases(sun);

  test('clock noon and solar noon drift apart and back by 30.6 minutes over 2025', () => {
    const year = Array.from({ length: 365 }, (_, i) => Date.UTC(2025, 0, 1 + i, 12));
    const minutes = year.map((ms) => sunCoordinates(ms).equationOfTimeMin);
    expect(Math.max(...minutes) - Math.min(...minutes)).toBeCloseTo(30.6, 1);
  });

  // Duffie & Beckman, Solar Engineering of Thermal Processes, 4th edition, examples 1.6.2 and 1.6.3, from memory; printed to
  // 0.1 degrees. Their azimuths count from south.
  test.each([
    [-14, -37.5, 66.5, -40],
    [23.1, 97.5, 79.6, 112],
  ])(
    'at latitude 43, declination %f, hour angle %f the sun stands %f from the zenith, %f from south (0.1)',
    (declination, hourAngle, zenith, fromSouth) => {
      const sun = sunDirection(43, declination, hourAngle);
      expect(Math.abs(90 - elevationDeg(sun) - zenith)).toBeLessThan(0.1);
      expect(Math.abs(bearingDeg(sun) - 180 - fromSouth)).toBeLessThan(0.1);
    },
  );

  test('at latitude 43 and declination -2.4 the sun sets at 87.8 degrees, after a day of 11.70 h (0.05, 0.01)', () => {
    const sunset = sunsetHourAngleRad(43, (-2.4 * Math.PI) / 180);
    expect(Math.abs((sunset * 180) / Math.PI - 87.8)).toBeLessThan(0.05);
    expect(Math.abs(dayLengthH(sunset) - 11.7)).toBeLessThan(0.01);
  });

  test('a facet leaning 30 degrees south at 40 N gets 1.61 of the level beam on 16 February, 9 to 10 h (1.8.1; 0.01)', () => {
    const normals = [direction(0, 90), direction(180, 60)];
    const receivers = normals.map(
      (normal) => ({ point: origin, normal, sides: 'one', onSurface: -1 }) as const,
    );
    const lights = [{ toSky: sunDirection(40, -13, -37.5), energy: 1 }];
    const [levelLight, facetLight] = irradiance({ surfaces: [], receivers, lights }) as unknown as [
      number,
      number,
    ];
    expect(Math.abs(facetLight / levelLight - 1.61)).toBeLessThan(0.01);
  });

  // US Naval Observatory, Earth's seasons, from memory, to the minute. The sun crosses 0.0003 degrees in a minute at an equinox;
  // the series is good to 0.01.
  test.each([
    ['2024-03-20T03:06Z', 0],
    ['2024-09-22T12:44Z', 0],
    ['2025-03-20T09:01Z', 0],
    ['2025-06-21T02:42Z', 23.44],
    ['2025-09-22T18:19Z', 0],
    ['2025-12-21T15:03Z', -23.44],
  ])('at the equinox or solstice of %s the declination is %f degrees (0.01)', (utc, declination) => {
    expect(Math.abs(sunCoordinates(Date.parse(utc)).declinationDeg - declination)).toBeLessThan(0.01);
  });
});
