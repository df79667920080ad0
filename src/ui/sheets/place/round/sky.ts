/** The sun's ways over the place, for the pictures of the sky: on the longest day, the shortest and the one asked for. */
import { type Place, sunPath, sunPosition, sunTimes } from '../../../../light/sun.ts';
import type { IsoDate } from '../../../../season/site.ts';
import { shortDay } from '../../../fields/dates.ts';
import { skyPixelOf } from './frame.ts';

type Pixel = readonly [x: number, y: number];

export interface SunArc {
  readonly date: string;
  readonly isChosen: boolean;
  readonly line: readonly Pixel[];
  /** Beside where the sun sets; null where it does not. */
  readonly labelAt: Pixel | null;
  /** Where it stands at full hours of its own time, every third hour with a figure. */
  readonly hours: readonly { readonly hour: number; readonly at: Pixel; readonly labelAt: Pixel }[];
}

const hourMs = 3_600_000;

function arcOf(date: IsoDate, place: Place, isChosen: boolean): SunArc {
  const path = sunPath(date, place);
  const { transitMs, sunsetMs } = sunTimes(date, place);
  const last = path.at(-1);
  const atHour = (hour: number) => sunPosition(transitMs + (hour - 12) * hourMs, place);
  const hours = Array.from({ length: 24 }, (_, hour) => ({ hour, sun: atHour(hour) }))
    .filter(({ sun }) => isChosen && sun.altitudeDeg > 0)
    .map(({ hour, sun: { azimuthDeg, altitudeDeg } }) => ({
      hour,
      at: skyPixelOf(azimuthDeg, altitudeDeg),
      labelAt: skyPixelOf(azimuthDeg, altitudeDeg - 6),
    }));
  return {
    date: shortDay(date),
    isChosen,
    line: path.map((sun) => skyPixelOf(sun.azimuthDeg, Math.max(0, sun.altitudeDeg))),
    labelAt: last === undefined || sunsetMs === null ? null : skyPixelOf(last.azimuthDeg, -4),
    hours,
  };
}

export function sunArcs(chosen: IsoDate, place: Place): readonly SunArc[] {
  const year = chosen.slice(0, 4);
  const ends = [`${year}-06-21`, `${year}-12-21`].filter((date) => date !== chosen);
  return [...ends.map((date) => arcOf(date, place, false)), arcOf(chosen, place, true)];
}
