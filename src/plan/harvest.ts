/** The main crop week by week: figs by the heat at which they ripen, spread as years differ. */
import { addDays } from '../season/calendar.ts';
import type { SeasonDates } from '../season/seasonDates.ts';
import type { IsoDate } from '../season/site.ts';
import type { FigValues } from '../species/fig.ts';

/** So many figs that ripen, in a normal year, when the heat since bud break comes to so much. */
export interface RipeningFigs {
  readonly figs: number;
  readonly ripeGdd8: number;
}

export interface HarvestWeek {
  /** First of its seven days; the last week ends with the season. */
  readonly from: IsoDate;
  readonly figs: number;
}

/**
 * Weeks from bud break to the end of ripening. The share of a fig's years in which it is ripe by a heat sum is the logistic of
 * `ripening.ts`, so all weeks together are the figs that ripen there.
 */
export function harvestByWeek(
  ripening: readonly RipeningFigs[],
  { budBreakOn, ripeningEndsOn, heat }: Pick<SeasonDates, 'budBreakOn' | 'ripeningEndsOn' | 'heat'>,
  values: FigValues,
): readonly HarvestWeek[] {
  const scale = (values.seasonEndSpreadGdd8 * Math.sqrt(3)) / Math.PI;
  const ripeBy = (on: IsoDate): number => {
    const sum = heat.sumAt(on);
    return ripening.reduce(
      (all, { figs, ripeGdd8 }) => all + figs / (1 + Math.exp((ripeGdd8 - sum) / scale)),
      0,
    );
  };
  const weeks: HarvestWeek[] = [];
  let before = 0;
  for (let from = budBreakOn; from < ripeningEndsOn; from = addDays(from, 7)) {
    const next = addDays(from, 7);
    const ripe = ripeBy(next < ripeningEndsOn ? next : ripeningEndsOn);
    weeks.push({ from, figs: ripe - before });
    before = ripe;
  }
  return weeks;
}

/** The week with most figs, the first of equals; null where none ripen. */
export function peakWeek(weeks: readonly HarvestWeek[]): IsoDate | null {
  const most = Math.max(0, ...weeks.map(({ figs }) => figs));
  return most === 0 ? null : (weeks.find(({ figs }) => figs === most)?.from ?? null);
}
