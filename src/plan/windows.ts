/** When each kind of work is done. */
import { addDays, daysBetween, yearOf } from '../season/calendar.ts';
import type { Ripening, SeasonDates } from '../season/seasonDates.ts';
import { seasonDates } from '../season/seasonDates.ts';
import type { IsoDate, Period, Site } from '../season/site.ts';
import type { FigValues } from '../species/fig.ts';
import type { Reason } from './cut.ts';

/** The part of the year that a day falls in, as far as cuts go. */
export type Stage = 'rest' | 'bud break' | 'in leaf';

export interface WorkYear {
  readonly stage: Stage;
  /** The season that the plan is for: the one under way, or in rest the one to come. */
  readonly season: SeasonDates;
  /** Buds are rubbed off. */
  readonly rubOff: Period;
  /** Structure cuts: after the hardest frost, before the buds swell; the next such window that has not closed. */
  readonly structure: Period;
  /** Shoots in leaf are thinned; ends some weeks before the first frost or the end of the season. */
  readonly thinning: Period;
}

export interface WorkYearInput {
  readonly site: Pick<Site, 'climate' | 'frost'>;
  readonly budBreakOn: IsoDate;
  readonly ripening: Ripening;
  readonly values: FigValues;
  readonly date: IsoDate;
}

/**
 * Reads the year of a day. Bud break of other years is taken on the same day of the year as the one given.
 * The windows are common practice: rubbing off from bud break until the shoots have about four leaves; structure cuts in late
 * winter; nothing headed in the last weeks before frost; dead and sick wood at any time.
 */
export function workYear(input: WorkYearInput): WorkYear {
  const { site, ripening, values, date } = input;
  const seasonFrom = (budBreakOn: IsoDate): SeasonDates =>
    seasonDates({ site, budBreakOn, values, ripening });
  const { last, next } = budBreaksAround(input.budBreakOn, date);
  const current = seasonFrom(last);
  const inSeason = date <= current.ripeningEndsOn;
  const season = inSeason ? current : seasonFrom(next);
  const rubOff = { from: season.budBreakOn, to: rubOffEndsOn(season, values) };
  const stage = !inSeason ? 'rest' : date <= rubOff.to ? 'bud break' : 'in leaf';
  return {
    stage,
    season,
    rubOff,
    structure: structureWindow(next, values),
    thinning: thinningWindow(season, rubOff, values),
  };
}

/** The last bud break on or before the date, and the first after it. */
function budBreaksAround(budBreakOn: IsoDate, date: IsoDate): { last: IsoDate; next: IsoDate } {
  const inYear = (year: number): IsoDate =>
    addDays(`${String(year).padStart(4, '0')}-01-01`, dayInYear(budBreakOn));
  const year = yearOf(date);
  const days = [year - 1, year, year + 1].map((y) => (y === yearOf(budBreakOn) ? budBreakOn : inYear(y)));
  const last = days.filter((day) => day <= date).pop() as IsoDate;
  const next = days.find((day) => day > date) as IsoDate;
  return { last, next };
}

const dayInYear = (date: IsoDate): number => daysBetween(`${date.slice(0, 4)}-01-01`, date);

function rubOffEndsOn(season: SeasonDates, values: FigValues): IsoDate {
  const heat = values.leafOutHeatGdd8 + values.rubOffUpToLeaves * values.phyllochronGdd8;
  const on = season.heat.dateAt(heat);
  return on === null || on > season.ripeningEndsOn ? season.ripeningEndsOn : on;
}

const structureWindow = (budBreakOn: IsoDate, values: FigValues): Period => ({
  from: addDays(budBreakOn, -7 * values.structureCutFromWeeks),
  to: addDays(budBreakOn, -7 * values.structureCutUntilWeeks),
});

function thinningWindow(season: SeasonDates, rubOff: Period, values: FigValues): Period {
  const to = addDays(season.ripeningEndsOn, -7 * values.lastHeadingWeeks);
  return { from: rubOff.to, to: to < rubOff.to ? rubOff.to : to };
}

/**
 * When a cut made for these reasons is due. Sick wood and suckers: from the day of the plan, for four weeks. Thinning
 * that comes too late in the season waits for winter.
 */
export function windowFor(reasons: readonly Reason[], year: WorkYear, date: IsoDate): Period {
  const rules = new Set(reasons.map((reason) => reason.rule));
  const atAnyTime = ['dead', 'diseased', 'damaged', 'sucker', 'pinned'] as const;
  if (atAnyTime.some((rule) => rules.has(rule))) return { from: date, to: addDays(date, 28) };
  if (rules.has('crowding') || rules.has('pair') || rules.has('below the fork')) {
    if (year.stage !== 'in leaf') return clip(year.rubOff, date);
    return clip(date > year.thinning.to ? year.structure : year.thinning, date);
  }
  return clip(year.structure, date);
}

/** A window that has begun starts today; one that is over is due at once. */
function clip(window: Period, date: IsoDate): Period {
  if (window.to < date) return { from: date, to: addDays(date, 7) };
  return window.from < date ? { from: date, to: window.to } : window;
}
