/** The part of the year in which the tree carries leaves. */
import { addDays, daysOf, nextOn } from './calendar.ts';
import type { SeasonDates } from './seasonDates.ts';
import type { IsoDate, Period, Site } from './site.ts';

export interface LeafSeason {
  readonly from: IsoDate;
  /** Normal first frost; where it never freezes the end of ripening. */
  readonly to: IsoDate;
  /** Days of a period on which the tree has no leaves. */
  readonly daysOutside: number;
}

/** By the day of the year, so that periods of other years count alike. */
export function leafSeason(
  { budBreakOn, leafOutOn, ripeningEndsOn }: SeasonDates,
  { frost }: Pick<Site, 'frost'>,
  period: Period,
): LeafSeason {
  const to = frost === null ? ripeningEndsOn : nextOn(frost.firstOfAutumn, addDays(budBreakOn, 1));
  const [first, last] = [leafOutOn.slice(5), to.slice(5)];
  const isInLeaf = (date: IsoDate): boolean => {
    const day = date.slice(5);
    return first <= last ? first <= day && day <= last : first <= day || day <= last;
  };
  return { from: leafOutOn, to, daysOutside: daysOf(period).filter((date) => !isInLeaf(date)).length };
}
