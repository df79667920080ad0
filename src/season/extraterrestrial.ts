/** Radiation at the top of the air and the length of the day, from the day of the year. */

/** FAO-56, table of constants: 1367 W m-2. */
export const solarConstantMJM2Min = 0.082;
/** The same, W m-2. */
export const solarConstantWM2 = (solarConstantMJM2Min * 1e6) / 60;

/** Declination, distance and sunset of a day after FAO-56. */
export interface DayOrbit {
  /** (mean distance / distance)^2. */
  readonly inverseDistance: number;
  readonly declinationRad: number;
  /** Hour angle of sunset, 0 (polar night) to pi (polar day). */
  readonly sunsetRad: number;
}

/**
 * Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, equations 23 to 25. The sun as a point, no refraction: real
 * days are 7 to 15 minutes longer. The declination is off by up to 1 degree, which moves a daily sum by up to 3 % at 40
 * degrees of latitude and 4.4 % at 50, most in late October: the model takes the declination from `light/sun.ts` instead.
 */
export function dayOrbit(latitudeDeg: number, dayOfYear: number): DayOrbit {
  requireFinite('dayOrbit', dayOfYear);
  requireLatitude('dayOrbit', latitudeDeg);
  const turn = (2 * Math.PI * dayOfYear) / 365;
  const declinationRad = 0.409 * Math.sin(turn - 1.39);
  return {
    inverseDistance: 1 + 0.033 * Math.cos(turn),
    declinationRad,
    sunsetRad: sunsetHourAngleRad(latitudeDeg, declinationRad),
  };
}

/** Hour angle at which the centre of the sun meets a level horizon: 0 when it never rises, pi when it never sets. */
export function sunsetHourAngleRad(latitudeDeg: number, declinationRad: number): number {
  requireFinite('sunsetHourAngleRad', declinationRad);
  requireLatitude('sunsetHourAngleRad', latitudeDeg);
  const c = -Math.tan((latitudeDeg * Math.PI) / 180) * Math.tan(declinationRad);
  return Math.acos(Math.min(1, Math.max(-1, c)));
}

/** Daylight hours, FAO-56 equation 34. */
export const dayLengthH = (sunsetRad: number): number => (24 / Math.PI) * sunsetRad;

/** Extraterrestrial radiation on the level, MJ m-2 d-1, FAO-56 equation 21; with a truer orbit where one is known. */
export function extraterrestrialMJM2Day(
  latitudeDeg: number,
  dayOfYear: number,
  orbit: DayOrbit = dayOrbit(latitudeDeg, dayOfYear),
): number {
  return extraterrestrialBetweenMJM2(latitudeDeg, orbit, -orbit.sunsetRad, orbit.sunsetRad);
}

/**
 * Extraterrestrial radiation on the level between two hour angles (radians, 0 at solar noon, afternoon positive),
 * MJ m-2, FAO-56 equation 28. Hour angles before sunrise and after sunset are taken as those.
 */
export function extraterrestrialBetweenMJM2(
  latitudeDeg: number,
  orbit: DayOrbit,
  fromRad: number,
  toRad: number,
): number {
  const minutes = (12 * 60) / Math.PI;
  const level = sineIntegralRad(latitudeDeg, orbit, fromRad, toRad);
  return minutes * solarConstantMJM2Min * orbit.inverseDistance * level;
}

/**
 * Integral of the sine of the sun's elevation over the hour angle, radians; hour angles before sunrise and after sunset are
 * taken as those. Over its length in radians it is the mean sine.
 */
export function sineIntegralRad(
  latitudeDeg: number,
  { declinationRad, sunsetRad }: Omit<DayOrbit, 'inverseDistance'>,
  fromRad: number,
  toRad: number,
): number {
  requireFinite('sineIntegralRad', fromRad, toRad);
  requireLatitude('sineIntegralRad', latitudeDeg);
  const from = Math.max(-sunsetRad, Math.min(sunsetRad, fromRad));
  const to = Math.max(-sunsetRad, Math.min(sunsetRad, toRad));
  const phi = (latitudeDeg * Math.PI) / 180;
  return (
    (to - from) * Math.sin(phi) * Math.sin(declinationRad) +
    Math.cos(phi) * Math.cos(declinationRad) * (Math.sin(to) - Math.sin(from))
  );
}

/** Correction of solar time for the season, hours, FAO-56 equations 32 and 33: b in radians. */
export function seasonalCorrection(dayOfYear: number): { readonly bRad: number; readonly hours: number } {
  requireFinite('seasonalCorrection', dayOfYear);
  const bRad = (2 * Math.PI * (dayOfYear - 81)) / 364;
  return { bRad, hours: 0.1645 * Math.sin(2 * bRad) - 0.1255 * Math.cos(bRad) - 0.025 * Math.sin(bRad) };
}

/**
 * Hour angle at a clock time, radians, FAO-56 equation 31. Longitudes here are east positive, as everywhere in this
 * project; the paper counts them west.
 * @param clockH standard time, hours; for the mean of an hour its middle
 * @param zoneMeridianDeg longitude of the centre of the time zone
 */
export function clockHourAngleRad(
  clockH: number,
  longitudeDeg: number,
  zoneMeridianDeg: number,
  dayOfYear: number,
): number {
  requireFinite('clockHourAngleRad', clockH, longitudeDeg, zoneMeridianDeg);
  const solarH = clockH + (longitudeDeg - zoneMeridianDeg) / 15 + seasonalCorrection(dayOfYear).hours;
  return (Math.PI / 12) * (solarH - 12);
}

/**
 * Extraterrestrial irradiance square to the sun, W m-2: Spencer 1971 (Search 2:172), within 0.01 % of its own
 * reference for the distance.
 */
export function extraterrestrialNormalWM2(dayOfYear: number, solarConstantWM2 = 1366.1): number {
  requireFinite('extraterrestrialNormalWM2', dayOfYear, solarConstantWM2);
  const b = (2 * Math.PI * (dayOfYear - 1)) / 365;
  return (
    solarConstantWM2 *
    (1.00011 +
      0.034221 * Math.cos(b) +
      0.00128 * Math.sin(b) +
      0.000719 * Math.cos(2 * b) +
      0.000077 * Math.sin(2 * b))
  );
}

function requireLatitude(who: string, latitudeDeg: number): void {
  if (!(Math.abs(latitudeDeg) <= 90)) {
    throw new Error(`${who}: a latitude within 90 degrees is needed, got ${latitudeDeg}`);
  }
}

function requireFinite(who: string, ...values: readonly number[]): void {
  for (const value of values) {
    if (!Number.isFinite(value)) throw new Error(`${who}: finite numbers are needed, got ${value}`);
  }
}
