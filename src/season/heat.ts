/** Heat sums: the clock of the tree. */
import { dateOf, dayNumber } from './calendar.ts';
import { dailyCourse } from './monthly.ts';
import type { Climate, IsoDate } from './site.ts';

export interface HeatLimits {
  readonly heatBaseC: number;
  /** Warmth above this counts no more. */
  readonly heatCapC: number;
}

/**
 * Heat of one day, degree-days: its mean, at most the cap, above the base.
 * Base and cap for the fig: Souza and others 2009 (Rev. Bras. Frutic.). Dropped: the course of the day, so a day with its
 * mean just under the base counts nothing though its noon was warm.
 */
export function heatOfDay(meanC: number, { heatBaseC, heatCapC }: HeatLimits): number {
  const heat = Math.max(0, Math.min(meanC, heatCapC) - heatBaseC);
  if (Number.isNaN(heat)) {
    throw new Error(
      `heatOfDay: temperatures are needed, got ${meanC} with base ${heatBaseC} and cap ${heatCapC}`,
    );
  }
  return heat;
}

/** Heat since a day, in a year of normal temperatures. */
export interface HeatClock {
  readonly from: IsoDate;
  /** Degree-days of all days from `from` up to but without `date`; 0 on or before `from`. */
  sumAt(date: IsoDate): number;
  /** The first day on which that sum stands; null when it is not reached within 365 days. */
  dateAt(sum: number): IsoDate | null;
}

const yearDays = 365;

/**
 * The heat clock of a normal year from monthly means. A normal year is smoother than any real one: where the mean is near
 * the base, real warm and cold spells give a little more heat than this (about 0.4 degree-days a day at the base
 * itself, for spells of 1 degree standard deviation; nothing from 3 degrees above).
 */
export function heatClock(climate: Climate, from: IsoDate, limits: HeatLimits): HeatClock {
  const meanC = dailyCourse(climate.meanC);
  const first = dayNumber(from);
  const sums = new Float64Array(yearDays + 1);
  for (let i = 0; i < yearDays; i++) {
    sums[i + 1] = (sums[i] as number) + heatOfDay(meanC(dateOf(first + i)), limits);
  }
  return {
    from,
    sumAt: (date) => sums[Math.min(yearDays, Math.max(0, dayNumber(date) - first))] as number,
    dateAt: (sum) => {
      if (Number.isNaN(sum)) throw new Error('dateAt: a heat sum is a number of degree-days, got NaN');
      const i = sums.findIndex((s) => s >= sum);
      return i < 0 ? null : dateOf(first + i);
    },
  };
}
