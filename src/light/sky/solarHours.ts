/** From the hours of a weather file, in standard time, to mean hours of each month in true solar time. */
import { dateOf, dayOfYear } from '../../season/calendar.ts';
import { type EpwHours, epwSlots, monthAndDay, monthSpan } from '../../season/epw/epwHours.ts';
import { fillGaps, tooManyMissing } from '../../season/epw/fillGaps.ts';
import { slotsOfYear } from '../../season/epw/temperatures.ts';
import {
  dayOrbit,
  extraterrestrialMJM2Day,
  sineIntegralRad,
  sunsetHourAngleRad,
} from '../../season/extraterrestrial.ts';
import { hourAngleDeg, sunCoordinates } from './sunCoordinates.ts';

export interface SolarHours {
  /** 12 months of 24 hours of true solar time, W m-2 on the level, means of the days. */
  readonly globalWM2: readonly (readonly number[])[];
  readonly diffuseWM2: readonly (readonly number[])[];
  /** Of each month: global radiation over that above the air. */
  readonly clearness: readonly number[];
  /** Share of the year's hours of daylight that were filled from the days around. */
  readonly filledShare: number;
}

/** How the sun runs through an hour of the file. */
interface SunHour {
  readonly isMorning: boolean;
  readonly sunsetRad: number;
  /** Integral of the sine of elevation over the hour angle while the sun is up, and for how long that is; radians. */
  readonly sineRad: number;
  readonly upRad: number;
  /** The integral's parts before and after the full hour of solar time within. */
  readonly parts: readonly { readonly solarHour: number; readonly sineRad: number }[];
}

const hourRad = Math.PI / 12;
const hourMs = 3_600_000;

interface Part {
  readonly fromRad: number;
  readonly toRad: number;
  /** 0 to 23. */
  readonly solarHour: number;
}

/** The parts of an hour before and after the full hour of solar time within it. */
function partsOf(fromRad: number): readonly Part[] {
  const solarHour = Math.min(23, Math.floor(fromRad / hourRad + 12));
  const edgeRad = (solarHour - 11) * hourRad;
  const [turn, next] = solarHour === 23 ? [2 * Math.PI, 0] : [0, solarHour + 1];
  return [
    { fromRad, toRad: edgeRad, solarHour },
    { fromRad: edgeRad - turn, toRad: fromRad + hourRad - turn, solarHour: next },
  ];
}

/** Of every slot; where a row is missing, in a common year. Sun in the middle of the hour; it drifts by 0.01 degrees within. */
function sunOf({ place, year }: EpwHours, slot: number): SunHour {
  const { month, day } = monthAndDay(Math.floor(slot / 24));
  const startMs = Date.UTC(year[slot] || 2001, month, day, slot % 24) - place.zoneH * hourMs;
  const declinationRad = (sunCoordinates(startMs + hourMs / 2).declinationDeg * Math.PI) / 180;
  const sunsetRad = sunsetHourAngleRad(place.latitudeDeg, declinationRad);
  const middleRad = (hourAngleDeg(startMs + hourMs / 2, place.longitudeDeg) * Math.PI) / 180;
  const beginRad = middleRad - hourRad / 2;
  const fromRad = beginRad < -Math.PI ? beginRad + 2 * Math.PI : beginRad;
  const sun = { declinationRad, sunsetRad };
  const upTo = (angleRad: number): number => Math.max(-sunsetRad, Math.min(sunsetRad, angleRad));
  const cut = partsOf(fromRad);
  const parts = cut.map((part) => ({
    solarHour: part.solarHour,
    sineRad: sineIntegralRad(place.latitudeDeg, sun, part.fromRad, part.toRad),
  }));
  return {
    isMorning: fromRad < 0,
    sunsetRad,
    parts,
    sineRad: parts.reduce((sum, part) => sum + part.sineRad, 0),
    upRad: cut.reduce((sum, part) => sum + upTo(part.toRad) - upTo(part.fromRad), 0),
  };
}

/**
 * Global and diffuse radiation of each slot from the three that a file may give; any two make the third through the mean
 * sine of elevation of the part of the hour with the sun up. Files that have a column of noughts for the global radiation get it
 * from the other two. Diffuse radiation is at most the global.
 */
function levelRadiation(hours: EpwHours, suns: readonly SunHour[]) {
  const { directNormalWhM2, diffuseWhM2 } = hours;
  const isBlank = hours.globalWhM2.every((value) => !(value > 0));
  const global = hours.globalWhM2.slice();
  const diffuse = diffuseWhM2.slice();
  suns.forEach(({ sineRad, upRad }, slot) => {
    const beam = (directNormalWhM2[slot] as number) * (upRad > 0 ? sineRad / upRad : 0);
    if (isBlank || Number.isNaN(global[slot])) global[slot] = beam + (diffuseWhM2[slot] as number);
    const whole = global[slot] as number;
    if (Number.isNaN(diffuse[slot])) diffuse[slot] = Math.max(0, whole - beam);
    diffuse[slot] = Math.min(whole, diffuse[slot] as number);
  });
  return { global, diffuse };
}

/** The largest share of a month's daylight hours that may be missing: our choice. */
const mostMissingShare = 0.05;

/**
 * Each hour of the file, which ends at the hour it is named by in standard time, is cut at the full solar hour within it; its
 * energy goes to both sides in proportion to the radiation above the air. No energy is lost: light of hours with the sun below
 * the level (twilight, or a clock that is off) goes to the first or last solar hour with sun. Gaps of up to a twentieth of a
 * month's daylight are filled; `tooMuchMissing` tells of larger ones.
 */
export function solarHours(
  hours: EpwHours,
): SolarHours | { readonly tooMuchMissing: { readonly month: number; readonly share: number } } {
  const suns = Array.from({ length: epwSlots }, (_, slot) => sunOf(hours, slot));
  const isOfYear = slotsOfYear(hours);
  const isLit = (slot: number): boolean => isOfYear(slot) && (suns[slot] as SunHour).sineRad > 0.001;
  const { global, diffuse } = levelRadiation(hours, suns);
  const both = global.map((value, slot) => value + (diffuse[slot] as number));
  const tooMuchMissing = tooManyMissing(both, isLit, mostMissingShare);
  if (tooMuchMissing !== null) return { tooMuchMissing };
  const lit = suns.flatMap((_, slot) => (isLit(slot) ? [slot] : []));
  const missing = lit.filter((slot) => Number.isNaN(both[slot])).length;
  const wholeYear = fillGaps(global, isLit);
  const skyYear = fillGaps(diffuse, isLit).map((value, slot) => Math.min(value, wholeYear[slot] as number));
  return {
    globalWM2: meanHours(wholeYear, suns, isOfYear),
    diffuseWM2: meanHours(skyYear, suns, isOfYear),
    clearness: clearnessOfMonths(hours, wholeYear, isOfYear),
    filledShare: missing / lit.length,
  };
}

/** Means over a month's days of the energy in each hour of solar time. */
function meanHours(
  values: Float64Array,
  suns: readonly SunHour[],
  isOfYear: (slot: number) => boolean,
): readonly (readonly number[])[] {
  return Array.from({ length: 12 }, (_, month) => {
    const { first, days } = monthSpan(month);
    const sums = new Array<number>(24).fill(0);
    let slots = 0;
    for (let slot = 24 * first; slot < 24 * (first + days); slot++) {
      if (!isOfYear(slot)) continue;
      slots++;
      const energy = values[slot] as number;
      if (energy > 0) share(energy, suns[slot] as SunHour, sums);
    }
    return sums.map((sum) => (24 * sum) / slots);
  });
}

function share(energy: number, { sineRad, parts, isMorning, sunsetRad }: SunHour, sums: number[]): void {
  if (sineRad > 0) {
    for (const part of parts) addTo(sums, part.solarHour, (energy * part.sineRad) / sineRad);
    return;
  }
  const edge = sunsetRad / hourRad;
  const hour = isMorning ? Math.floor(12 - edge) : Math.ceil(12 + edge) - 1;
  addTo(sums, Math.max(0, Math.min(23, hour)), energy);
}

function addTo(sums: number[], hour: number, energy: number): void {
  sums[hour] = (sums[hour] as number) + energy;
}

function clearnessOfMonths(
  { place, year }: EpwHours,
  global: Float64Array,
  isOfYear: (slot: number) => boolean,
): readonly number[] {
  return Array.from({ length: 12 }, (_, month) => {
    const { first, days } = monthSpan(month);
    let got = 0;
    let above = 0;
    for (let day = first; day < first + days; day++) {
      if (!isOfYear(24 * day)) continue;
      for (let slot = 24 * day; slot < 24 * (day + 1); slot++) got += (global[slot] || 0) * 0.0036;
      above += aboveTheAirMJM2(place, Date.UTC(year[24 * day] || 2001, month, day - first + 1));
    }
    return above > 0 ? got / above : 0;
  });
}

/** Of the day that begins then, with the declination of its noon. */
function aboveTheAirMJM2({ latitudeDeg, longitudeDeg }: EpwHours['place'], dayMs: number): number {
  const noonMs = dayMs + 12 * hourMs - (longitudeDeg / 15) * hourMs;
  const declinationRad = (sunCoordinates(noonMs).declinationDeg * Math.PI) / 180;
  const ofYear = dayOfYear(dateOf(dayMs / (24 * hourMs)));
  const sunsetRad = sunsetHourAngleRad(latitudeDeg, declinationRad);
  const orbit = { ...dayOrbit(latitudeDeg, ofYear), declinationRad, sunsetRad };
  return extraterrestrialMJM2Day(latitudeDeg, ofYear, orbit);
}
