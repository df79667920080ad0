/** Small gaps in a year of hours, filled from the days around them. */
import { monthSpan } from './epwHours.ts';

/** How far to look for a day with that hour, in days either way. */
const reachDays = 7;

const yearDays = 366;

/**
 * Puts the mean of the nearest earlier and later day's same hour in place of each missing figure, over New Year too; where one
 * side has none within a week, the other's alone. Our choice: neighbouring days keep the hour, and so the sun's height.
 * @param values by slot, NaN where missing; slots not `wanted` are left as they are
 */
export function fillGaps(values: Float64Array, wanted: (slot: number) => boolean): Float64Array {
  const filled = values.slice();
  for (let slot = 0; slot < values.length; slot++) {
    if (!Number.isNaN(values[slot]) || !wanted(slot)) continue;
    const found = [-1, 1].map((way) => nearest(values, slot, way)).filter((value) => !Number.isNaN(value));
    if (found.length > 0) filled[slot] = found.reduce((sum, value) => sum + value, 0) / found.length;
  }
  return filled;
}

function nearest(values: Float64Array, slot: number, way: number): number {
  const [day, hour] = [Math.floor(slot / 24), slot % 24];
  for (let i = 1; i <= reachDays; i++) {
    const other = (day + way * i + yearDays) % yearDays;
    const value = values[24 * other + hour] as number;
    if (!Number.isNaN(value)) return value;
  }
  return Number.NaN;
}

/** Months, 0 to 11, with more than that share of their wanted figures missing, and the share. */
export function tooManyMissing(
  values: Float64Array,
  wanted: (slot: number) => boolean,
  mostShare: number,
): { readonly month: number; readonly share: number } | null {
  for (let month = 0; month < 12; month++) {
    const { first, days } = monthSpan(month);
    let count = 0;
    let missing = 0;
    for (let slot = 24 * first; slot < 24 * (first + days); slot++) {
      if (!wanted(slot)) continue;
      count++;
      if (Number.isNaN(values[slot])) missing++;
    }
    if (count > 0 && missing > mostShare * count) return { month, share: missing / count };
  }
  return null;
}
