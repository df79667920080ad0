/** Days and months as they are read on the page. */
import { monthNames } from '../../season/calendar.ts';
import type { DayOfYear, IsoDate } from '../../season/site.ts';

export { shortDay } from '../../season/calendar.ts';

const dayAndYear = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
});

/** "June" for 6. */
export function monthName(month: number): string {
  const name = monthNames[month - 1];
  if (name === undefined) throw new Error(`monthName: a month is 1 to 12, got ${month}`);
  return name;
}

/** "14 April 2026" */
export const longDay = (date: IsoDate): string => dayAndYear.format(Date.parse(date));

/** "04-30" for 30 and 31 April: a day past the end of its month is the last of it. February has 29 days. */
export function dayOfYear(month: number, day: number): DayOfYear {
  const last = new Date(Date.UTC(2000, month, 0)).getUTCDate();
  return [month, Math.min(day, last)].map((n) => String(n).padStart(2, '0')).join('-');
}
