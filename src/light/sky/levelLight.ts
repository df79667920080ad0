/** Light on the open level over some days, by the sun's declination and its time: what every question about these days is answered from. */
import { daysOf } from '../../season/calendar.ts';
import type { Period } from '../../season/site.ts';
import { beamRows, rowOfDeclination } from './cells.ts';
import { dayLight, daySteps, type SkySite, stepDeg, type Weather } from './dayLight.ts';

/**
 * Sums over the days. Entry row * 144 + step: row of the beam grid (`cells.ts`), ten minutes of solar time from midnight. A day is shared
 * linearly between the two rows whose middles are next to its declination.
 */
export interface LevelLight {
  readonly days: number;
  /** mol m-2. */
  readonly beamParMolM2: Float64Array;
  readonly diffuseParMolM2: Float64Array;
  /** Hours in which the sun's centre is above the level. */
  readonly sunH: Float64Array;
}

const entries = beamRows * daySteps;
const empty = (): LevelLight => ({
  days: 0,
  beamParMolM2: new Float64Array(entries),
  diffuseParMolM2: new Float64Array(entries),
  sunH: new Float64Array(entries),
});

/** Hours of a step between a sunrise and a sunset as far from noon as each other. */
function sunHoursOfStep(step: number, sunsetHourAngleDeg: number): number {
  const from = Math.max(-sunsetHourAngleDeg, step * stepDeg - 180);
  const to = Math.min(sunsetHourAngleDeg, (step + 1) * stepDeg - 180);
  return Math.max(0, to - from) / 15;
}

/** Adds a day's steps to its two rows. */
function addDay(into: Float64Array, declinationDeg: number, steps: Float64Array): void {
  const place = rowOfDeclination(declinationDeg) - 0.5;
  const lower = Math.max(0, Math.min(beamRows - 1, Math.floor(place)));
  const upper = Math.min(beamRows - 1, lower + 1);
  const upperShare = Math.min(1, Math.max(0, place - lower));
  for (let step = 0; step < daySteps; step++) {
    const value = steps[step] as number;
    if (value === 0) continue;
    const [low, high] = [lower * daySteps + step, upper * daySteps + step];
    into[low] = (into[low] as number) + value * (1 - upperShare);
    into[high] = (into[high] as number) + value * upperShare;
  }
}

/** Throws on a period that ends before it begins. */
export function levelLight(site: SkySite, period: Period, weather?: Weather): LevelLight {
  const dates = daysOf(period);
  const level = { ...empty(), days: dates.length };
  const sunH = new Float64Array(daySteps);
  for (const date of dates) {
    const { declinationDeg, sunsetHourAngleDeg, ...day } = dayLight(site, date, weather);
    for (let step = 0; step < daySteps; step++) sunH[step] = sunHoursOfStep(step, sunsetHourAngleDeg);
    addDay(level.beamParMolM2, declinationDeg, day.beamParMolM2);
    addDay(level.diffuseParMolM2, declinationDeg, day.diffuseParMolM2);
    addDay(level.sunH, declinationDeg, sunH);
  }
  return level;
}

/** The light of all their days. */
export function together(parts: readonly LevelLight[]): LevelLight {
  const sum = empty();
  const add = (into: Float64Array, values: Float64Array): void => {
    values.forEach((value, i) => {
      into[i] = (into[i] as number) + value;
    });
  };
  for (const part of parts) {
    add(sum.beamParMolM2, part.beamParMolM2);
    add(sum.diffuseParMolM2, part.diffuseParMolM2);
    add(sum.sunH, part.sunH);
  }
  return { ...sum, days: parts.reduce((days, part) => days + part.days, 0) };
}
