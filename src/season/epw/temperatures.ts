/** Warmth of the months and dates of frost, from the hours of a year. */
import type { Monthly, Site } from '../site.ts';
import { type EpwHours, monthAndDay, monthSpan } from './epwHours.ts';
import { fillGaps } from './fillGaps.ts';

export interface YearOfWarmth {
  /** Mean of all hours. */
  readonly meanC: Monthly;
  /** Mean of the lowest hours of the days. */
  readonly minC: Monthly;
  /** Last day of spring and first of autumn on which an hour was below 0; null where none was. One year's, not a normal. */
  readonly frost: Site['frost'];
}

/** Slots of the days that the year has: 29 February where the file has an hour of it. */
export function slotsOfYear({ year }: EpwHours): (slot: number) => boolean {
  const { first, days } = monthSpan(1);
  const leapDay = first + days - 1;
  const isLeap = year.subarray(24 * leapDay, 24 * (leapDay + 1)).some((y) => y !== 0);
  return (slot) => isLeap || Math.floor(slot / 24) !== leapDay;
}

/** Needs an hour of every day within a week of it, or throws; small gaps are filled. */
export function yearOfWarmth(hours: EpwHours): YearOfWarmth {
  const isOfYear = slotsOfYear(hours);
  const filled = fillGaps(hours.temperatureC, isOfYear);
  const ofMonth = Array.from({ length: 12 }, (_, month) => {
    const { first, days } = monthSpan(month);
    const there = Array.from({ length: days }, (__, d) => first + d).filter((day) => isOfYear(24 * day));
    const mean = there.reduce((sum, day) => sum + meanOfDay(filled, day), 0) / there.length;
    const min = there.reduce((sum, day) => sum + lowestOfDay(filled, day), 0) / there.length;
    return { mean, min };
  });
  if (!ofMonth.every(({ mean }) => Number.isFinite(mean)))
    throw new Error('yearOfWarmth: a temperature of every hour within a week is needed, got none');
  const monthly = (of: 'mean' | 'min'): Monthly => ofMonth.map((month) => month[of]) as unknown as Monthly;
  return { meanC: monthly('mean'), minC: monthly('min'), frost: frostDates(filled, monthly('mean')) };
}

const dayOf = (values: Float64Array, day: number): Float64Array => values.subarray(24 * day, 24 * (day + 1));

const meanOfDay = (values: Float64Array, day: number): number =>
  dayOf(values, day).reduce((sum, c) => sum + c, 0) / 24;

const lowestOfDay = (values: Float64Array, day: number): number => Math.min(...dayOf(values, day));

/** Backwards and forwards from the middle of the warmest month to the first day with frost. */
function frostDates(filled: Float64Array, meanC: Monthly): Site['frost'] {
  const warmest = monthSpan(meanC.indexOf(Math.max(...meanC))).first + 14;
  const isFrosty = (day: number): boolean => lowestOfDay(filled, day) < 0;
  const search = (way: number): string | null => {
    for (let i = 1; i <= 183; i++) {
      const day = (warmest + way * i + 366) % 366;
      if (isFrosty(day)) return monthDayText(day);
    }
    return null;
  };
  const [lastOfSpring, firstOfAutumn] = [search(-1), search(1)];
  return lastOfSpring === null || firstOfAutumn === null ? null : { lastOfSpring, firstOfAutumn };
}

const two = (value: number): string => String(value).padStart(2, '0');

function monthDayText(slotDay: number): string {
  const { month, day } = monthAndDay(slotDay);
  return `${two(month + 1)}-${two(day)}`;
}
