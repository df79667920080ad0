/** The sun over a place: positions, rise and set. The only file that imports suncalc. */
import { getPosition, getTimes } from 'suncalc';
import type { Vec3 } from '../geometry/vec.ts';
import { rad } from '../geometry/world.ts';
import { dayNumber } from '../season/calendar.ts';
import type { IsoDate } from '../season/site.ts';
import { hourAngleDeg, sunCoordinates } from './sky/sunCoordinates.ts';

export interface Place {
  /** North positive. */
  readonly latitudeDeg: number;
  /** East positive. */
  readonly longitudeDeg: number;
}

export interface SunPosition {
  readonly instantMs: number;
  /** 0 at solar noon, afternoon positive, -180 to 180. */
  readonly hourAngleDeg: number;
  /** Clockwise from north. */
  readonly azimuthDeg: number;
  /** True elevation of its centre above the level, without refraction: what geometry and shadows use. */
  readonly altitudeDeg: number;
}

const dayMs = 86_400_000;

/**
 * Position of the sun at an instant (ms since 1970, universal time). suncalc 2.0.2 measured against the published
 * solar position algorithm: direction off by 0.0045 degrees on average, at most 0.016. Throws on what is no number.
 */
export function sunPosition(instantMs: number, place: Place): SunPosition {
  const { azimuth, altitude } = refracted(instantMs, place);
  return {
    instantMs,
    hourAngleDeg: hourAngleDeg(instantMs, place.longitudeDeg),
    azimuthDeg: azimuth,
    altitudeDeg: withoutRefractionDeg(altitude),
  };
}

/** Elevation as the eye sees it, lifted by the air at sea level; below the horizon meaningless. */
export function apparentAltitudeDeg(instantMs: number, place: Place): number {
  return refracted(instantMs, place).altitude;
}

function refracted(instantMs: number, place: Place): { azimuth: number; altitude: number } {
  if (!Number.isFinite(instantMs))
    throw new Error(`sunPosition: an instant in ms is needed, got ${instantMs}`);
  requirePlace('sunPosition', place);
  return getPosition(new Date(instantMs), place.latitudeDeg, place.longitudeDeg);
}

function requirePlace(who: string, { latitudeDeg, longitudeDeg }: Place): void {
  if (!(Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180)) {
    throw new Error(
      `${who}: a latitude within 90 and a longitude within 180 degrees, got ${latitudeDeg}, ${longitudeDeg}`,
    );
  }
}

/** Refraction that suncalc adds to a true elevation, degrees: Meeus 1998, equation 16.4; below 0 it adds that of 0. */
function refractionDeg(trueDeg: number): number {
  const h = Math.max(0, trueDeg);
  return 1.02 / 60 / Math.tan(rad(h + 10.26 / (h + 5.1)));
}

/** Undoes `refractionDeg`. Each round brings the answer ten times nearer, as refraction changes by less than 0.1 a degree. */
function withoutRefractionDeg(apparentDeg: number): number {
  let h = apparentDeg - refractionDeg(apparentDeg);
  for (let round = 0; round < 12; round++) h = apparentDeg - refractionDeg(h);
  return h;
}

/** The instant at which the mean sun stands highest on that day at that longitude. */
const meanNoonMs = (date: IsoDate, longitudeDeg: number): number =>
  dayNumber(date) * dayMs + dayMs / 2 - (longitudeDeg / 360) * dayMs;

export interface SunTimes {
  readonly sunriseMs: number | null;
  readonly transitMs: number;
  readonly sunsetMs: number | null;
  /** Why there is no rising and setting; null where there is. */
  readonly allDay: 'up' | 'down' | null;
}

/**
 * Rise, transit and set of the sun's upper rim with 34 minutes of refraction, within 5 s of the published algorithm.
 * The day is the calendar day at the place's longitude: near the date line it can differ from the zone's.
 */
export function sunTimes(date: IsoDate, place: Place): SunTimes {
  requirePlace('sunTimes', place);
  // suncalc takes the solar noon nearest to the instant given: only a noon gives the day that is meant.
  const noon = new Date(meanNoonMs(date, place.longitudeDeg));
  const times = getTimes(noon, place.latitudeDeg, place.longitudeDeg);
  const up = times.alwaysUp === true ? 'up' : 'down';
  return {
    sunriseMs: times.sunrise?.valueOf() ?? null,
    transitMs: times.solarNoon.valueOf(),
    sunsetMs: times.sunset?.valueOf() ?? null,
    allDay: times.sunrise === null ? up : null,
  };
}

/**
 * The way of the sun over one day, for drawing: its rise, then every multiple of `stepDeg` of hour angle, then its
 * set. Empty when it stays down; a whole turn when it stays up.
 */
export function sunPath(date: IsoDate, place: Place, stepDeg = 5): readonly SunPosition[] {
  if (!(stepDeg > 0)) throw new Error(`sunPath: a step above 0 degrees is needed, got ${stepDeg}`);
  const { sunriseMs, transitMs, sunsetMs, allDay } = sunTimes(date, place);
  if (allDay === 'down') return [];
  const from = sunriseMs ?? transitMs - dayMs / 2;
  const to = sunsetMs ?? transitMs + dayMs / 2;
  const stepMs = (stepDeg / 360) * dayMs;
  const instants = [from];
  for (let i = Math.ceil((from - transitMs) / stepMs); transitMs + i * stepMs < to; i++) {
    if (transitMs + i * stepMs > from) instants.push(transitMs + i * stepMs);
  }
  instants.push(to);
  return instants.map((instant) => sunPosition(instant, place));
}

/** Declination of the sun at the noon of a day at a longitude, degrees. */
export function noonDeclinationDeg(date: IsoDate, longitudeDeg: number): number {
  return sunCoordinates(meanNoonMs(date, longitudeDeg)).declinationDeg;
}

/** Unit vector towards a sun of that declination and hour angle, all in degrees; may point below the level. Throws on NaN. */
export function sunDirection(latitudeDeg: number, declinationDeg: number, hourAngle: number): Vec3 {
  if (!Number.isFinite(latitudeDeg + declinationDeg + hourAngle)) {
    throw new Error(
      `sunDirection: finite angles are needed, got ${latitudeDeg}, ${declinationDeg}, ${hourAngle}`,
    );
  }
  const [phi, delta, omega] = [rad(latitudeDeg), rad(declinationDeg), rad(hourAngle)];
  const north = Math.cos(phi) * Math.sin(delta) - Math.sin(phi) * Math.cos(delta) * Math.cos(omega);
  const upward = Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.cos(omega);
  return [-Math.cos(delta) * Math.sin(omega), upward, -north];
}
