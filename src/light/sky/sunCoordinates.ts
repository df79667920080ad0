/** Where the sun stands among the stars, and solar time, from low-precision series. */

import { sunDistanceAu } from './sunDistance.ts';

const rad = Math.PI / 180;
const dayMs = 86_400_000;
const j2000Ms = Date.UTC(2000, 0, 1, 12);
/** Terrestrial minus universal time, seconds: right within 9 s for 1995 to 2035, which moves the sun by 0.0001 degrees. */
const deltaTS = 69;

export interface SunCoordinates {
  /** Apparent, geocentric, degrees, 0 to 360. */
  readonly rightAscensionDeg: number;
  /** Apparent, geocentric, degrees, -23.45 to 23.45. */
  readonly declinationDeg: number;
  readonly distanceAu: number;
  /** Apparent minus mean solar time, minutes: positive in October and November. */
  readonly equationOfTimeMin: number;
}

const sinDeg = (angleDeg: number): number => Math.sin(angleDeg * rad);
const cosDeg = (angleDeg: number): number => Math.cos(angleDeg * rad);

/**
 * Meeus 1998, Astronomical Algorithms, chapter 25 (low accuracy) and equation 28.1. For 1950 to 2050: direction
 * within 0.01 degrees, distance within 0.00001 au, equation of time within 0.05 minutes. Throws on an instant that is no number.
 */
export function sunCoordinates(instantMs: number): SunCoordinates {
  if (!Number.isFinite(instantMs))
    throw new Error(`sunCoordinates: an instant in ms is needed, got ${instantMs}`);
  const t = (instantMs + deltaTS * 1000 - j2000Ms) / dayMs / 36_525;
  const meanLongitude = 280.46646 + t * (36_000.76983 + t * 0.0003032);
  const anomaly = 357.52911 + t * (35_999.05029 - t * 0.0001537);
  const centre =
    (1.914602 - t * (0.004817 + t * 0.000014)) * sinDeg(anomaly) +
    (0.019993 - 0.000101 * t) * sinDeg(2 * anomaly) +
    0.000289 * sinDeg(3 * anomaly);
  const node = 125.04 - 1934.136 * t;
  const nutation = -0.00478 * sinDeg(node);
  const longitude = meanLongitude + centre - 0.00569 + nutation;
  const obliquity = 23.439291 - t * (0.0130042 + t * (0.00000016 - t * 0.000000504)) + 0.00256 * cosDeg(node);
  const ra = Math.atan2(cosDeg(obliquity) * sinDeg(longitude), cosDeg(longitude)) / rad;
  const timeDeg = meanLongitude - 0.0057183 - ra + nutation * cosDeg(obliquity);
  return {
    rightAscensionDeg: (ra + 360) % 360,
    declinationDeg: Math.asin(sinDeg(obliquity) * sinDeg(longitude)) / rad,
    distanceAu: sunDistanceAu(t / 10),
    equationOfTimeMin: 4 * (timeDeg - 360 * Math.round(timeDeg / 360)),
  };
}

/** Local hour angle of the sun, degrees, -180 to 180: 0 at solar noon, afternoon positive. */
export function hourAngleDeg(instantMs: number, longitudeDeg: number): number {
  const solarMin = (instantMs % dayMs) / 60_000 + sunCoordinates(instantMs).equationOfTimeMin;
  const angle = solarMin / 4 - 180 + longitudeDeg;
  return angle - 360 * Math.round(angle / 360);
}
