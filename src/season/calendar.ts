/** Calendar days without clocks or zones: a day is a text "YYYY-MM-DD", or whole days since 1970-01-01. */
import type { DayOfYear, IsoDate, Period } from './site.ts';

const dayMs = 86_400_000;

/** Whole days from 1970-01-01. Throws on a text that is no calendar day, such as 2025-02-30. */
export function dayNumber(date: IsoDate): number {
  // A date without a time of day is read in universal time by ECMA-262, whatever the zone of the machine.
  const ms = /^\d{4}-\d\d-\d\d$/.test(date) ? Date.parse(date) : Number.NaN;
  if (!Number.isFinite(ms) || new Date(ms).toISOString().slice(0, 10) !== date) {
    throw new Error(`dayNumber: a calendar day is written YYYY-MM-DD, got ${date}`);
  }
  return ms / dayMs;
}

/** The calendar day that many days after 1970-01-01. Years 0000 to 9999. */
export function dateOf(day: number): IsoDate {
  if (!(Number.isInteger(day) && day >= -719_528 && day <= 2_932_896)) {
    throw new Error(`dateOf: a whole number of days within the years 0000 to 9999 is needed, got ${day}`);
  }
  return new Date(day * dayMs).toISOString().slice(0, 10);
}

export const addDays = (date: IsoDate, days: number): IsoDate => dateOf(dayNumber(date) + days);

/** Days from one day to another; negative when `to` is earlier. */
export const daysBetween = (from: IsoDate, to: IsoDate): number => dayNumber(to) - dayNumber(from);

/** 1 on 1 January to 365, or 366 in a leap year. */
export const dayOfYear = (date: IsoDate): number =>
  dayNumber(date) - dayNumber(`${date.slice(0, 4)}-01-01`) + 1;

export function yearOf(date: IsoDate): number {
  dayNumber(date);
  return Number(date.slice(0, 4));
}

/** 1 to 12. */
export function monthOf(date: IsoDate): number {
  dayNumber(date);
  return Number(date.slice(5, 7));
}

/** Days in the month of a date, 28 to 31. */
export function daysInMonth(date: IsoDate): number {
  const last = Date.UTC(2000 + (yearOf(date) % 400), monthOf(date), 0);
  return new Date(last).getUTCDate();
}

/** Every day of a period, first and last included. Throws when it ends before it begins. */
export function daysOf(period: Period): readonly IsoDate[] {
  const first = dayNumber(period.from);
  const count = dayNumber(period.to) - first + 1;
  if (count < 1)
    throw new Error(`daysOf: a period ends on or after its first day, got ${period.from} to ${period.to}`);
  return Array.from({ length: count }, (_, i) => dateOf(first + i));
}

/** The first such day of the year on or after `from`. 29 February falls on the 28th in other years. */
export function nextOn(day: DayOfYear, from: IsoDate): IsoDate {
  const year = yearOf(from);
  for (const y of [year, year + 1]) {
    const date = inYear(day, y);
    if (date >= from) return date;
  }
  throw new Error(`nextOn: a day of the year is written MM-DD, got ${day}`);
}

function inYear(day: DayOfYear, year: number): IsoDate {
  const yyyy = String(year).padStart(4, '0');
  const leap = daysInMonth(`${yyyy}-02-01`) === 29;
  const date = `${yyyy}-${day === '02-29' && !leap ? '02-28' : day}`;
  dayNumber(date);
  return date;
}

/** Parts of a period month by month, in order of time; a month of two different years is two parts. */
export function monthsOf(period: Period): readonly Period[] {
  const parts: Period[] = [];
  let from = period.from;
  daysOf(period);
  while (from <= period.to) {
    const monthEnd = `${from.slice(0, 8)}${daysInMonth(from)}`;
    const to = monthEnd < period.to ? monthEnd : period.to;
    parts.push({ from, to });
    from = addDays(to, 1);
  }
  return parts;
}

/** In English; January first. */
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

/** "24 Jun" */
export const shortDay = (date: IsoDate): string =>
  `${Number(date.slice(8))} ${(monthNames[monthOf(date) - 1] as string).slice(0, 3)}`;
