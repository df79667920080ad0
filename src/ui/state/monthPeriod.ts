/** One month of a season. */
import { addDays, daysInMonth, monthOf } from '../../season/calendar.ts';
import type { Period } from '../../season/site.ts';

/** The whole calendar month (1 to 12) of which the season holds a part; null when it holds none. */
export function monthPeriod(season: Period, month: number): Period | null {
  let from = `${season.from.slice(0, 8)}01`;
  while (from <= season.to) {
    const days = daysInMonth(from);
    if (monthOf(from) === month) return { from, to: addDays(from, days - 1) };
    from = addDays(from, days);
  }
  return null;
}
