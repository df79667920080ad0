/** The sun's way over a day, with the hours of the clock on the wall written on it. */
import { type Place, sunPath, sunPosition, sunTimes } from '../../light/sun.ts';
import { dayNumber } from '../../season/calendar.ts';
import type { IsoDate } from '../../season/site.ts';
import type { SunPoint, SunView } from '../scene/stageModel.ts';

const hourMs = 3_600_000;

/** Full hours of the clock from the first instant to the last. Zones are off by whole quarters of an hour. */
function fullHours(fromMs: number, toMs: number, timeZone: string): { instantMs: number; label: string }[] {
  const clock = new Intl.DateTimeFormat('en-GB', {
    hour: 'numeric',
    minute: 'numeric',
    hourCycle: 'h23',
    timeZone,
  });
  const found: { instantMs: number; label: string }[] = [];
  const quarterMs = hourMs / 4;
  for (let ms = Math.ceil(fromMs / quarterMs) * quarterMs; ms < toMs; ms += quarterMs) {
    const parts = clock.formatToParts(ms);
    const part = (type: string) => Number(parts.find((p) => p.type === type)?.value);
    if (part('minute') === 0) found.push({ instantMs: ms, label: String(part('hour')) });
  }
  return found;
}

/**
 * @param hour of the day at which the sun lights the stage, by the sun's own time: 12 is its highest
 */
export function sunViewOf(
  date: IsoDate,
  place: Place & { readonly timeZone: string },
  hour: number,
): SunView {
  const path = sunPath(date, place);
  const first = path[0];
  const last = path[path.length - 1];
  if (first === undefined || last === undefined) return { path: [], now: null };
  const marks = fullHours(first.instantMs, last.instantMs, place.timeZone).map((mark) => ({
    ...sunPosition(mark.instantMs, place),
    label: mark.label,
  }));
  const points = [...path.map((point) => ({ ...point, label: null })), ...marks];
  const inOrder: SunPoint[] = points.sort((a, b) => a.instantMs - b.instantMs);
  const now = sunPosition(sunTimes(date, place).transitMs + (hour - 12) * hourMs, place);
  return { path: inOrder, now: now.altitudeDeg > 0 ? now : null };
}

/** "6:04" to "21:31", by the clock of the place; null where the sun does not rise or set. */
export function riseAndSet(
  date: IsoDate,
  place: Place & { readonly timeZone: string },
): [string, string] | null {
  dayNumber(date);
  const { sunriseMs, sunsetMs } = sunTimes(date, place);
  if (sunriseMs === null || sunsetMs === null) return null;
  const clock = new Intl.DateTimeFormat('en-GB', {
    hour: 'numeric',
    minute: '2-digit',
    timeZone: place.timeZone,
  });
  return [clock.format(sunriseMs), clock.format(sunsetMs)];
}
