/** Whether days and years fit together. */
import type { TreeFile } from '../treeFile.ts';
import type { Finding } from './finding.ts';

const dayMs = 86_400_000;
const earliest = 1900;
const latest = 2200;
/** A sketch may look ahead to the coming bud break, or back on one of the same season. */
const daysAhead = 250;
const daysBack = 370;
const daysOfMonth = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

const yearOf = (isoDate: string): number => Number(isoDate.slice(0, 4));

/** Days from one calendar day to another; both are read as midnight in universal time, so no zone matters. */
const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / dayMs;

function findBadSeason({ budBreakOn, sketchedOn }: TreeFile['season']): Finding | null {
  for (const [name, day] of Object.entries({ budBreakOn, sketchedOn })) {
    const year = yearOf(day);
    if (year < earliest || year > latest) {
      return { place: ['season', name], reason: `The year must be ${earliest} to ${latest}, got ${year}.` };
    }
  }
  const days = daysBetween(budBreakOn, sketchedOn);
  if (days >= -daysAhead && days <= daysBack) return null;
  return {
    place: ['season', 'budBreakOn'],
    reason: `Bud break (${budBreakOn}) and the day of the sketch (${sketchedOn}) belong to different seasons. Enter the bud break of the season that the sketch is for.`,
  };
}

/** A day of the year that no month has. */
function findNoSuchDay(days: object, place: Finding['place']): Finding | null {
  for (const [name, day] of Object.entries(days) as [string, string][]) {
    const [month, dayOfMonth] = day.split('-').map(Number) as [number, number];
    if (dayOfMonth > (daysOfMonth[month - 1] ?? 0)) {
      const reason = `There is no such day in that month: ${day}. It is written as MM-DD.`;
      return { place: [...place, name], reason };
    }
  }
  return null;
}

const findBadDay = ({ frost, cover }: TreeFile['site']): Finding | null =>
  findNoSuchDay(frost ?? {}, ['site', 'frost']) ??
  findNoSuchDay(cover?.dates ?? {}, ['site', 'cover', 'dates']);

function findFutureWood(file: TreeFile): Finding | null {
  const year = yearOf(file.season.sketchedOn);
  const i = file.axes.findIndex((axis) => axis.grownIn > year);
  if (i < 0) return null;
  return {
    place: ['axes', i, 'grownIn'],
    reason: `This wood grew in ${file.axes[i]?.grownIn}, after the tree was sketched (${file.season.sketchedOn}). Correct the year or the day of the sketch.`,
  };
}

export const findWrongTime = (file: TreeFile): Finding | null =>
  findBadSeason(file.season) ?? findBadDay(file.site) ?? findFutureWood(file);
