/** The sun's ways over the sky of a node, and what stands before it. */
import type { SkyAnswer, SkyThing } from '../../../engine/look.ts';
import { direction } from '../../../geometry/world.ts';
import { skyPlace } from '../../../light/look/skyRaster.ts';
import { noonDeclinationDeg, type Place, sunPath } from '../../../light/sun.ts';
import { addDays } from '../../../season/calendar.ts';
import type { IsoDate, Period } from '../../../season/site.ts';
import { sunViewOf } from '../../stage/sunView.ts';

/** A place on the round picture, from -1 (west, south) to 1 (east, north). */
export type SkyPoint = readonly [toEast: number, toNorth: number];

const placeOf = (azimuthDeg: number, altitudeDeg: number): SkyPoint =>
  skyPlace(direction(azimuthDeg, Math.max(0, altitudeDeg)));

export interface SkyWay {
  readonly date: IsoDate;
  readonly points: readonly SkyPoint[];
  /** Full hours of the clock at the place. */
  readonly hours: readonly { readonly label: string; readonly at: SkyPoint }[];
}

export function skyWay(date: IsoDate, site: Place & { readonly timeZone: string }): SkyWay {
  const { path } = sunViewOf(date, site, 12);
  const up = path.filter((point) => point.altitudeDeg >= 0);
  return {
    date,
    points: up.map((point) => placeOf(point.azimuthDeg, point.altitudeDeg)),
    hours: up.flatMap(({ label, azimuthDeg, altitudeDeg }) =>
      label === null ? [] : [{ label, at: placeOf(azimuthDeg, altitudeDeg) }],
    ),
  };
}

/**
 * Days of the season with its highest sun, its lowest and one half-way between, in order of time; of two half-way the
 * later, as the figs ripen then.
 */
export function threeDates({ from, to }: Period, { latitudeDeg, longitudeDeg }: Place): readonly IsoDate[] {
  const days: { date: IsoDate; highDeg: number }[] = [];
  const summer = latitudeDeg < 0 ? -1 : 1;
  for (let date = from; date <= to; date = addDays(date, 1)) {
    days.push({ date, highDeg: summer * noonDeclinationDeg(date, longitudeDeg) });
  }
  const highs = days.map(({ highDeg }) => highDeg);
  const [low, high] = [Math.min(...highs), Math.max(...highs)];
  const nearest = (wantedDeg: number, slackDeg: number): IsoDate => {
    const offs = highs.map((highDeg) => Math.abs(highDeg - wantedDeg));
    const least = Math.min(...offs);
    return days[offs.findLastIndex((offDeg) => offDeg <= least + slackDeg)]?.date ?? from;
  };
  const chosen = [nearest(high, 0), nearest((low + high) / 2, aDayDeg), nearest(low, 0)];
  return [...new Set(chosen)].sort();
}

/** From one day to the next the noon sun rises or sinks by up to so much. */
const aDayDeg = 0.4;

/** The thing that is met first at a place of the picture; null outside the circle. */
export function thingAt({ size, first, things }: SkyAnswer, [toEast, toNorth]: SkyPoint): SkyThing | null {
  const cell = (share: number): number => Math.min(size - 1, Math.max(0, Math.floor(share * size)));
  const index = first[cell((1 - toNorth) / 2) * size + cell((1 + toEast) / 2)] ?? -1;
  return things[index] ?? null;
}

export interface BeforeSun {
  /** Null for nothing: the sun itself is seen. */
  readonly name: string | null;
  /** Of the shoot or branch, for selecting it; null for what cannot be selected. */
  readonly id: string | null;
  /** Hours of each day's sun, in the order of the dates. */
  readonly hours: readonly number[];
}

/** Steps of the sun's way that are looked at: ten minutes each. */
const stepDeg = 2.5;

/** What stands before the sun on each of the days, by hours in all; first of all the open sun. */
export function beforeTheSun(
  answer: SkyAnswer,
  dates: readonly IsoDate[],
  place: Place,
): readonly BeforeSun[] {
  const found = new Map<string, { name: string | null; id: string | null; hours: number[] }>();
  const none = (): number[] => dates.map(() => 0);
  found.set('', { name: null, id: null, hours: none() });
  dates.forEach((date, d) => {
    const path = sunPath(date, place, stepDeg);
    for (let i = 1; i < path.length; i++) {
      const [before, after] = [path[i - 1] as (typeof path)[number], path[i] as (typeof path)[number]];
      const altitudeDeg = (before.altitudeDeg + after.altitudeDeg) / 2;
      if (altitudeDeg <= 0) continue;
      const middle = (before.instantMs + after.instantMs) / 2;
      const turned = wrapTurn(after.azimuthDeg - before.azimuthDeg);
      const thing = thingAt(answer, placeOf(before.azimuthDeg + turned / 2, altitudeDeg));
      const hours = ((after.instantMs - middle) * 2) / 3_600_000;
      const isOpen = thing === null || thing.kind === 'sky';
      const [id, name] = isOpen ? [null, null] : 'id' in thing ? [thing.id, thing.name] : [null, thing.name];
      const key = id ?? name ?? '';
      const entry = found.get(key) ?? { name, id, hours: none() };
      entry.hours[d] = (entry.hours[d] as number) + hours;
      found.set(key, entry);
    }
  });
  const total = ({ hours }: { hours: readonly number[] }): number => hours.reduce((sum, h) => sum + h, 0);
  const [open, ...others] = [...found.values()];
  return [open as BeforeSun, ...others.sort((a, b) => total(b) - total(a))];
}

const wrapTurn = (deg: number): number => ((deg + 540) % 360) - 180;
