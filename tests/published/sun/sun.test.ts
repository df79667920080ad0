import { describe, expect, test } from 'vitest';
import { angleBetweenDeg, origin } from '../../../src/geometry/vec.ts';
import { bearingDeg, direction, elevationDeg } from '../../../src/geometry/world.ts';
import { irradiance } from '../../../src/light/irradiance.ts';
import { hourAngleDeg, sunCoordinates } from '../../../src/light/sky/sunCoordinates.ts';
import { apparentAltitudeDeg, sunDirection, sunPosition, sunTimes } from '../../../src/light/sun.ts';
import { airMass, pressurePa } from '../../../src/season/clearSky.ts';
import { dayLengthH, sunsetHourAngleRad } from '../../../src/season/extraterrestrial.ts';
import { checkCases } from '../caseTable.ts';
import cases from './cases.json' with { type: 'json' };

const golden = { latitudeDeg: 39.742476, longitudeDeg: -105.1786 };
const spa = Date.parse('2003-10-17T19:30:30Z');
const south = { latitudeDeg: -35, longitudeDeg: 0 };

/** Seconds after midnight of a zone that is `zoneH` hours from universal time. */
function seconds(date: string, place: typeof golden, zoneH: number): number[] {
  const { sunriseMs, transitMs, sunsetMs } = sunTimes(date, place);
  const midnight = Date.parse(`${date}T00:00:00Z`) - zoneH * 3_600_000;
  return [sunriseMs, transitMs, sunsetMs].map((ms) => ((ms as number) - midnight) / 1000);
}

const equationAt = (day: string): number => sunCoordinates(Date.parse(`${day}T12:00:00Z`)).equationOfTimeMin;
const facet = direction(0, 0);
const sunAt60 = direction(60, 60);

describe('the sun against published values', () => {
  checkCases(cases, {
    'sun.spa.elev_true': () => sunPosition(spa, golden).altitudeDeg,
    'sun.spa.azimuth': () => sunPosition(spa, golden).azimuthDeg,
    'sun.spa.elev_apparent': () => apparentAltitudeDeg(spa, golden),
    'sun.spa.zenith_apparent': () => 90 - apparentAltitudeDeg(spa, golden),
    'sun.spa.eot': () => sunCoordinates(spa).equationOfTimeMin,
    'sun.spa.decl': () => sunCoordinates(spa).declinationDeg,
    'sun.spa.ra': () => sunCoordinates(spa).rightAscensionDeg,
    'sun.spa.R': () => sunCoordinates(spa).distanceAu,
    'sun.spa.Hlocal': () => hourAngleDeg(spa, golden.longitudeDeg),
    'sun.rise.south1996': () => seconds('1996-07-05', south, 0),
    'sun.rise.south2004': () => seconds('2004-12-04', south, 0),
    'sun.rise.golden.jan': () => seconds('2015-01-02', golden, -7),
    'sun.rise.golden.aug': () => seconds('2015-08-02', golden, -7).slice(0, 2),
    'sun.rise.golden.aug.sunset': () => seconds('2015-08-02', golden, -7).slice(2),
    'sun.distance': () =>
      ['2015-01-02T07:00Z', '2015-08-02T07:00Z'].map((utc) => sunCoordinates(Date.parse(utc)).distanceAu),
    'sun.db161': () => {
      // Azimuths count from south there, afternoon positive: 15 is bearing 195; the facet leans 45 degrees from level.
      return angleBetweenDeg(direction(195, 90 - 45), sunDirection(43, -14, -22.5));
    },
    'sun.aoi': () => {
      const receivers = [{ point: origin, normal: facet, sides: 'one', onSurface: -1 }] as const;
      const lights = [{ toSky: sunAt60, energy: 1 }];
      return [angleBetweenDeg(facet, sunAt60), ...irradiance({ surfaces: [], receivers, lights })];
    },
    'sun.eot.extremes': () => [equationAt('2025-11-03'), equationAt('2025-02-11')],
    'sun.airmass': () => [0, 80, 89.9].map(airMass),
    'sun.pressure': () => [0, 1000].map(pressurePa),
  });

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
