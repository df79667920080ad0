/** The sun, by our code. */
import { angleBetweenDeg, origin } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { irradiance } from '../../../src/light/irradiance.ts';
import { hourAngleDeg, sunCoordinates } from '../../../src/light/sky/sunCoordinates.ts';
import { apparentAltitudeDeg, sunDirection, sunPosition, sunTimes } from '../../../src/light/sun.ts';
import { airMass, pressurePa } from '../../../src/season/clearSky.ts';
import type { CaseTable, PublishedCase } from '../caseTable.ts';
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

export const sun: CaseTable = {
  cases: cases satisfies PublishedCase[],
  answers: {
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
  },
};
