/** A pot that is turned through the season. */
import { daysBetween } from '../../season/calendar.ts';
import type { IsoDate } from '../../season/site.ts';

/** By 90 degrees clockwise after every so many weeks from a day on. */
export interface QuarterTurns {
  readonly from: IsoDate;
  readonly everyWeeks: number;
}

/** Poses of a pot that is turned by quarters: 0 as it stands, then turned by 90, 180, 270 degrees clockwise. */
export const poseCount = 4;

/** How far it then stands turned clockwise. */
export const poseDeg = (pose: number): number => (360 / poseCount) * pose;

/** Pose on a day: 0 before the first turn. */
export function poseOn({ from, everyWeeks }: QuarterTurns, date: IsoDate): number {
  if (!(everyWeeks > 0)) throw new Error(`poseOn: weeks between turns must be above 0, got ${everyWeeks}`);
  return Math.floor(Math.max(0, daysBetween(from, date)) / (7 * everyWeeks)) % poseCount;
}
