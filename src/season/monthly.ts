/** A smooth daily course through twelve monthly means. */
import { daysInMonth, monthOf } from './calendar.ts';
import type { IsoDate, Monthly } from './site.ts';

/** Value of a day of the year. */
export type DailyCourse = (date: IsoDate) => number;

/**
 * Straight lines between the middles of the months, whose heights there are chosen such that the mean over
 * the days of every month is the mean given: (x[m-1] + 6 x[m] + x[m+1]) / 8 = mean[m]. Our choice, after the
 * idea of Rymes & Myers 2001 (Solar Energy 71:225-231).
 *
 * Errors: the monthly means come back within 0.0002 of the second difference of the neighbouring months (in
 * practice 0.002 degrees C, for a month has a whole number of days); against a sine of amplitude A over the
 * year the daily value is off by at most 0.03 A. Days cannot leave the means of their own and the next months by
 * much, but may pass the highest mean a little: a mean that must not fall below 0 has to be clamped by the caller.
 */
export function dailyCourse(means: Monthly): DailyCourse {
  if (!means.every(Number.isFinite))
    throw new Error(`dailyCourse: twelve finite means are needed, got ${means.join(', ')}`);
  const middles = middlesKeepingMeans(means);
  const middle = (month: number): number => middles[(month + 12) % 12] as number;
  return (date) => {
    const month = monthOf(date) - 1;
    const through = (Number(date.slice(8, 10)) - 0.5) / daysInMonth(date) - 0.5;
    const neighbour = middle(month + (through < 0 ? -1 : 1));
    return middle(month) + (neighbour - middle(month)) * Math.abs(through);
  };
}

/** Solved by adding back what is missing: each round halves the error at least, since the matrix lies within 0.5 and 1. */
function middlesKeepingMeans(means: Monthly): number[] {
  let x = [...means];
  for (let round = 0; round < 60; round++) {
    const now = x;
    const at = (m: number): number => now[(m + 12) % 12] as number;
    x = now.map((value, m) => value + (means[m] as number) - (at(m - 1) + 6 * value + at(m + 1)) / 8);
  }
  return x;
}
