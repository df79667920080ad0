/** Days and months as they are read on the page. */
import type { IsoDate } from '../../season/site.ts';

const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });
const dayAndYear = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
});

export const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** "June" for 6. */
export function monthName(month: number): string {
  const name = monthNames[month - 1];
  if (name === undefined) throw new Error(`monthName: a month is 1 to 12, got ${month}`);
  return name;
}

/** "14 Apr" */
export const shortDay = (date: IsoDate): string => day.format(Date.parse(date));

/** "14 April 2026" */
export const longDay = (date: IsoDate): string => dayAndYear.format(Date.parse(date));
