/** Values of options, read from text. An option that is not given is undefined. */
import type { Weather } from '../light/sky/dayLight.ts';
import type { CieSkyType } from '../light/sky/luminance.ts';
import type { SkyKind } from '../light/sky/skyEnergy.ts';
import { dayNumber, daysBetween } from '../season/calendar.ts';
import type { Period } from '../season/site.ts';
import { misuse, type Read } from './read.ts';

export function readWord<Word extends string>(
  option: string,
  text: string,
  words: readonly Word[],
): Read<Word> {
  const value = words.find((word) => word === text);
  return value === undefined
    ? misuse(`${option} must be ${words.join(' or ')}, got ${text}`)
    : { ok: true, value };
}

export function readWhole(
  option: string,
  text: string | undefined,
  min: number,
  max: number,
): Read<number | undefined> {
  if (text === undefined) return { ok: true, value: undefined };
  const value = /^\d{1,10}$/.test(text) ? Number(text) : Number.NaN;
  if (value >= min && value <= max) return { ok: true, value };
  return misuse(`${option} must be a whole number from ${min} to ${max}, got ${text}`);
}

/** A share typed in percent. */
export function readPercent(
  option: string,
  text: string | undefined,
  min: number,
  max: number,
): Read<number | undefined> {
  if (text === undefined) return { ok: true, value: undefined };
  const percent = /^\d{1,3}([.,]\d{1,4})?$/.test(text) ? Number(text.replace(',', '.')) : Number.NaN;
  if (percent >= min && percent <= max) return { ok: true, value: percent / 100 };
  return misuse(`${option} must be a figure in percent from ${min} to ${max}, got ${text}`);
}

/** A named weather or the path of a weather file. */
export function readWeather(
  text: string | undefined,
): Read<{ readonly weather?: Weather; readonly weatherFile?: string }> {
  if (text === undefined) return { ok: true, value: {} };
  if (text === 'normal' || text === 'clear') return { ok: true, value: { weather: text } };
  if (/\.epw$/i.test(text)) return { ok: true, value: { weatherFile: text } };
  return misuse(`--weather must be normal, clear or the path of a weather file ending in .epw, got ${text}`);
}

/** A named sky or the number of a CIE sky. */
export function readSky(text: string | undefined): Read<SkyKind | undefined> {
  const value = (['uniform', 'overcast', 'clear', 'all-weather'] as const).find((word) => word === text);
  if (text === undefined || value !== undefined) return { ok: true, value };
  const type = /^\d{1,2}$/.test(text) ? Number(text) : 0;
  if (type >= 1 && type <= 15) return { ok: true, value: type as CieSkyType };
  return misuse(`--sky must be uniform, overcast, clear, all-weather or a CIE sky from 1 to 15, got ${text}`);
}

function isCalendarDay(text: string): boolean {
  try {
    return Number.isFinite(dayNumber(text));
  } catch {
    return false;
  }
}

export function readDate(option: string, text: string | undefined): Read<string | undefined> {
  if (text === undefined || (isCalendarDay(text) && text >= '1900' && text < '2200'))
    return { ok: true, value: text };
  return misuse(`${option} must be a day of the calendar such as 2027-04-18, from 1900 to 2199, got ${text}`);
}

/** A period of at most a year from both of its ends. */
export function readPeriod(from: string | undefined, to: string | undefined): Read<Period | undefined> {
  const [first, last] = [readDate('--from', from), readDate('--to', to)];
  if (!first.ok) return first;
  if (!last.ok) return last;
  if (first.value === undefined && last.value === undefined) return { ok: true, value: undefined };
  if (first.value === undefined || last.value === undefined)
    return misuse('--from and --to go together: give both');
  const days = daysBetween(first.value, last.value);
  if (days < 0) return misuse(`--to must not lie before --from, got ${first.value} to ${last.value}`);
  if (days > 366)
    return misuse(`--from to --to may span a year at most, got ${first.value} to ${last.value}`);
  return { ok: true, value: { from: first.value, to: last.value } };
}
