/** The PAR of a normal or a clear day, step by step through solar time. */
import { dayOfYear } from '../../season/calendar.ts';
import { haurwitzWM2 } from '../../season/clearSky.ts';
import { dayRadiation } from '../../season/dayRadiation.ts';
import { diffuseShareOfHour, diffuseShareOfPar } from '../../season/diffuseShare.ts';
import {
  type DayOrbit,
  dayOrbit,
  solarConstantMJM2Min,
  sunsetHourAngleRad,
} from '../../season/extraterrestrial.ts';
import { diffuseShareAt, globalShareAt } from '../../season/hourShares.ts';
import { parMolPerMJ } from '../../season/par.ts';
import type { IsoDate, Site } from '../../season/site.ts';
import { noonDeclinationDeg } from '../sun.ts';
import type { Cover } from './cover.ts';
import type { HorizonSite } from './horizon.ts';
import type { QuarterTurns } from './turns.ts';

/** What the sky needs to know of a site, and what lies between the sky and a plant there. */
export interface SkySite extends Pick<Site, 'latitudeDeg' | 'longitudeDeg' | 'climate'>, HorizonSite {
  readonly cover?: Cover | undefined;
  readonly quarterTurns?: QuarterTurns | undefined;
}

/** Steps of 10 minutes of solar time (2.5 degrees of hour angle) from midnight. */
export const daySteps = 144;
export const stepDeg = 360 / daySteps;

/** Hour angle of the middle of a step, degrees. */
export const hourAngleOfStep = (step: number): number => (step + 0.5) * stepDeg - 180;

export interface DayLight {
  readonly declinationDeg: number;
  readonly sunsetHourAngleDeg: number;
  readonly globalMJM2: number;
  readonly diffuseMJM2: number;
  /** Beam PAR on the level in each step, mol m-2. */
  readonly beamParMolM2: Float64Array;
  /** Diffuse PAR on the level in each step, mol m-2. */
  readonly diffuseParMolM2: Float64Array;
}

/** A day of the mean weather of its month, or one without a cloud. */
export type Weather = 'normal' | 'clear';

/** A day's radiation on the level in each step, MJ m-2. */
interface Steps {
  readonly global: Float64Array;
  readonly diffuse: Float64Array;
}

/**
 * A normal day's global and diffuse radiation, spread over the hours by Collares-Pereira & Rabl 1979 and Liu & Jordan 1960 (both divided
 * by their sums, so the day keeps its totals). Where the spread diffuse exceeds the spread global (dull days, low sun), the beam is
 * 0 and the rest of the day's beam is scaled to keep its total.
 */
function normalSteps(site: SkySite, date: IsoDate, orbit: DayOrbit): Steps {
  const { globalMJM2, diffuseMJM2 } = dayRadiation(site, date, orbit);
  const globalShare = spread(orbit.sunsetRad, globalShareAt);
  const diffuse = spread(orbit.sunsetRad, diffuseShareAt).map((share) => share * diffuseMJM2);
  const beam = globalShare.map((share, i) => Math.max(0, share * globalMJM2 - (diffuse[i] as number)));
  const beamSum = sum(beam);
  const scale = beamSum > 0 ? (globalMJM2 - diffuseMJM2) / beamSum : 0;
  return { global: diffuse.map((value, i) => value + (beam[i] as number) * scale), diffuse };
}

const stepS = 86_400 / daySteps;

/**
 * A cloudless day: global radiation by Haurwitz 1945 at the middle of each step, its diffuse share by the hourly fit of
 * Erbs, Klein & Duffie 1982 from the clearness it stands for. Dropped: haze, dust and the height of the site; clear skies
 * differ by a tenth either way.
 */
function clearSteps(sines: Float64Array, { inverseDistance }: DayOrbit): Steps {
  const aboveWM2 = (solarConstantMJM2Min * 1e6 * inverseDistance) / 60;
  const clearWM2 = sines.map((sine) => (sine > 0 ? haurwitzWM2((Math.asin(sine) * 180) / Math.PI) : 0));
  const global = clearWM2.map((watts) => (watts * stepS) / 1e6);
  const diffuse = global.map((value, i) => {
    const clearness = (clearWM2[i] as number) / (aboveWM2 * (sines[i] as number));
    return value > 0 ? value * diffuseShareOfHour(Math.min(1, clearness)) : 0;
  });
  return { global, diffuse };
}

/** Sine of the sun's elevation at the middle of each step. */
function sinesOfSteps(latitudeDeg: number, delta: number): Float64Array {
  const phi = (latitudeDeg * Math.PI) / 180;
  return Float64Array.from({ length: daySteps }, (_, step) => {
    const omega = (hourAngleOfStep(step) * Math.PI) / 180;
    return Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.cos(omega);
  });
}

/**
 * A day's radiation step by step, turned into PAR by one factor; the diffuse share of PAR by Spitters and others 1986. The
 * sun's path is that of the day's true declination. PAR of all steps together is the day's global radiation times
 * the PAR factor, exactly.
 */
export function dayLight(site: SkySite, date: IsoDate, weather: Weather = 'normal'): DayLight {
  const { latitudeDeg, longitudeDeg } = site;
  const declinationDeg = noonDeclinationDeg(date, longitudeDeg);
  const declinationRad = (declinationDeg * Math.PI) / 180;
  const sunsetRad = sunsetHourAngleRad(latitudeDeg, declinationRad);
  const orbit = { ...dayOrbit(latitudeDeg, dayOfYear(date)), declinationRad, sunsetRad };
  const sines = sinesOfSteps(latitudeDeg, declinationRad);
  const steps = weather === 'clear' ? clearSteps(sines, orbit) : normalSteps(site, date, orbit);
  const beamParMolM2 = new Float64Array(daySteps);
  const diffuseParMolM2 = new Float64Array(daySteps);
  for (let step = 0; step < daySteps; step++) {
    const global = steps.global[step] as number;
    if (!(global > 0)) continue;
    const share = diffuseShareOfPar(
      Math.min(1, (steps.diffuse[step] as number) / global),
      Math.min(1, Math.max(0, sines[step] as number)),
    );
    diffuseParMolM2[step] = global * parMolPerMJ * share;
    beamParMolM2[step] = global * parMolPerMJ * (1 - share);
  }
  return {
    declinationDeg,
    sunsetHourAngleDeg: (sunsetRad * 180) / Math.PI,
    globalMJM2: sum(steps.global),
    diffuseMJM2: sum(steps.diffuse),
    beamParMolM2,
    diffuseParMolM2,
  };
}

/** Shares of the steps, 1 in all; all 0 where the sun does not rise. */
function spread(
  sunsetRad: number,
  shareAt: (hourAngleRad: number, sunsetRad: number) => number,
): Float64Array {
  const shares = Float64Array.from({ length: daySteps }, (_, step) =>
    shareAt((hourAngleOfStep(step) * Math.PI) / 180, sunsetRad),
  );
  const total = sum(shares);
  return total > 0 ? shares.map((share) => share / total) : shares;
}

function sum(values: Float64Array): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
