/** How a day's radiation runs: from monthly means, without a cloud, or from mean hours. */
import { addDays, dayOfYear, daysInMonth, monthOf } from '../../season/calendar.ts';
import { haurwitzWM2 } from '../../season/clearSky.ts';
import { dayRadiation, middleOfMonth } from '../../season/dayRadiation.ts';
import { diffuseShareOfHour } from '../../season/diffuseShare.ts';
import {
  type DayOrbit,
  dayOrbit,
  solarConstantWM2,
  sunsetHourAngleRad,
} from '../../season/extraterrestrial.ts';
import { clearSkyShare } from '../../season/globalRadiation.ts';
import { diffuseShareAt, globalShareAt } from '../../season/hourShares.ts';
import type { HourlyRadiation, IsoDate, Site } from '../../season/site.ts';
import { noonDeclinationDeg } from '../sun.ts';
import { daySteps, hourAngleOfStep, hourSteps } from './daySteps.ts';

type WeatherSite = Pick<Site, 'latitudeDeg' | 'longitudeDeg' | 'climate'>;

/** A day's radiation on the level in each step, MJ m-2. */
export interface RadiationSteps {
  readonly global: Float64Array;
  readonly diffuse: Float64Array;
}

/** Sine of the sun's elevation at the middle of each step. */
export function sinesOfSteps(latitudeDeg: number, declinationRad: number): Float64Array {
  const phi = (latitudeDeg * Math.PI) / 180;
  const [level, turning] = [
    Math.sin(phi) * Math.sin(declinationRad),
    Math.cos(phi) * Math.cos(declinationRad),
  ];
  return cosines.map((cosine) => level + turning * cosine);
}
const cosines = Float64Array.from({ length: daySteps }, (_, step) =>
  Math.cos((hourAngleOfStep(step) * Math.PI) / 180),
);

/** Distance of the sun after FAO-56, declination and sunset true. */
export function trueOrbit({ latitudeDeg, longitudeDeg }: WeatherSite, date: IsoDate): DayOrbit {
  const declinationRad = (noonDeclinationDeg(date, longitudeDeg) * Math.PI) / 180;
  const sunsetRad = sunsetHourAngleRad(latitudeDeg, declinationRad);
  return { ...dayOrbit(latitudeDeg, dayOfYear(date)), declinationRad, sunsetRad };
}

/**
 * A normal day's global and diffuse radiation, spread over the hours by Collares-Pereira & Rabl 1979 and Liu & Jordan 1960 (both divided
 * by their sums, so the day keeps its totals). Where the spread diffuse exceeds the spread global (dull days, low sun), the beam is
 * 0 and the rest of the day's beam is scaled to keep its total.
 */
export function normalSteps(site: WeatherSite, date: IsoDate, orbit: DayOrbit): RadiationSteps {
  const orbits = { day: orbit, middle: trueOrbit(site, middleOfMonth(date)) };
  const { globalMJM2, diffuseMJM2 } = dayRadiation(site, date, orbits);
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
 * Erbs, Klein & Duffie 1982 from the clearness it stands for. It rises with the height of the site as FAO-56, equation 37, has it: 2.7 %
 * for each 1,000 m. Dropped: haze and dust; clear skies differ by a tenth either way.
 */
export function clearSteps(
  sines: Float64Array,
  { inverseDistance }: DayOrbit,
  elevationM = 0,
): RadiationSteps {
  const higher = clearSkyShare(elevationM) / clearSkyShare(0);
  const aboveWM2 = solarConstantWM2 * inverseDistance;
  const clearWM2 = sines.map((sine) =>
    sine > 0 ? higher * haurwitzWM2((Math.asin(sine) * 180) / Math.PI) : 0,
  );
  const global = clearWM2.map((watts) => (watts * stepS) / 1e6);
  const diffuse = global.map((value, i) => {
    const clearness = (clearWM2[i] as number) / (aboveWM2 * (sines[i] as number));
    return value > 0 ? value * diffuseShareOfHour(Math.min(1, clearness)) : 0;
  });
  return { global, diffuse };
}

/** A month's mean hours, and the mean sine of elevation that stands against each. */
interface MonthHours {
  readonly global: readonly number[];
  readonly diffuse: readonly number[];
  readonly meanSine: Float64Array;
}

/** Sums over the steps of each hour of the sine of elevation while the sun is up. */
function hourSines(sines: Float64Array): Float64Array {
  const hours = new Float64Array(24);
  sines.forEach((sine, step) => {
    const hour = Math.floor(step / hourSteps);
    hours[hour] = (hours[hour] as number) + Math.max(0, sine);
  });
  return hours;
}

const towardsNoon: readonly number[] = [...Array(12).keys()].flatMap((h) => [h, 23 - h]);

/**
 * A month's hours as they can be spread over its days: what an hour holds beyond the radiation above the air (twilight, or
 * an hour in which the sun is not up that year) goes to the next towards noon.
 */
function monthHours(hourly: HourlyRadiation, site: WeatherSite, date: IsoDate): MonthHours {
  const month = monthOf(date) - 1;
  const first = `${date.slice(0, 8)}01`;
  const days = Array.from({ length: daysInMonth(date) }, (_, i) => addDays(first, i));
  const meanSine = new Float64Array(24);
  for (const day of days) {
    const declinationRad = (noonDeclinationDeg(day, site.longitudeDeg) * Math.PI) / 180;
    hourSines(sinesOfSteps(site.latitudeDeg, declinationRad)).forEach((sine, hour) => {
      meanSine[hour] = (meanSine[hour] as number) + sine / hourSteps / days.length;
    });
  }
  const global = [...(hourly.globalWM2[month] ?? [])];
  const diffuse = [...(hourly.diffuseWM2[month] ?? [])];
  for (const hour of towardsNoon) {
    const next = hour < 12 ? Math.min(11, hour + 1) : Math.max(12, hour - 1);
    const most = solarConstantWM2 * (meanSine[hour] as number);
    if (next === hour || !((global[hour] as number) > most)) continue;
    const moved = 1 - most / (global[hour] as number);
    for (const values of [global, diffuse]) {
      const energy = (values[hour] as number) * moved;
      values[hour] = (values[hour] as number) - energy;
      values[next] = (values[next] as number) + energy;
    }
  }
  return { global, diffuse, meanSine };
}

/**
 * A day of mean hours: each hour has the same share of the radiation above the air on all days of the month, so the days
 * together keep the month's hours, and light begins and ends with the sun of each day.
 */
export function hourlySteps(
  hourly: HourlyRadiation,
  site: WeatherSite,
): (date: IsoDate, sines: Float64Array) => RadiationSteps {
  const months = new Map<string, MonthHours>();
  return (date, sines) => {
    const key = date.slice(0, 7);
    const hours = months.get(key) ?? monthHours(hourly, site, date);
    months.set(key, hours);
    const spreadOver = (watts: readonly number[]): Float64Array =>
      sines.map((sine, step) => {
        const hour = Math.floor(step / hourSteps);
        const mean = hours.meanSine[hour] as number;
        return sine > 0 && mean > 0 ? (((watts[hour] as number) * stepS) / 1e6) * (sine / mean) : 0;
      });
    return { global: spreadOver(hours.global), diffuse: spreadOver(hours.diffuse) };
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

/** Of all steps. */
export function sum(values: Float64Array): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
