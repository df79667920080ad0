/** The dates of one season, from the day the buds break. */
import type { figSeason } from '../species/fig/season.ts';
import { addDays, dateOf, dayNumber, nextOn } from './calendar.ts';
import { type HeatClock, heatClock } from './heat.ts';
import { dailyCourse } from './monthly.ts';
import type { IsoDate, Site } from './site.ts';

export type Ripening = 'early' | 'mid' | 'late';

/** The figures read here; the values of a whole species will do. */
export type SeasonValues = { readonly [Name in keyof typeof figSeason]: number };

export interface SeasonInput {
  readonly site: Pick<Site, 'climate' | 'frost'>;
  readonly budBreakOn: IsoDate;
  readonly values: SeasonValues;
  readonly ripening: Ripening;
}

export interface SeasonDates {
  readonly budBreakOn: IsoDate;
  /** First leaf unfolded. Where the warmth for it never comes: the end of ripening, so that the season is empty. */
  readonly leafOutOn: IsoDate;
  /** First main-crop figs visible; null when the warmth does not come before the end of ripening. So too below. */
  readonly firstFigsOn: IsoDate | null;
  readonly fullLeafOn: IsoDate | null;
  /** First ripe main-crop fig. */
  readonly firstRipeOn: IsoDate | null;
  /** Figs not ripe on this day will not ripen. */
  readonly ripeningEndsOn: IsoDate;
  readonly endedBy: 'frost' | 'cold nights' | 'length of season';
  /** Heat since bud break in a normal year, GDD8. */
  readonly heat: HeatClock;
}

/** The season's dates in a normal year. Works in both hemispheres and over New Year. */
export function seasonDates({ site, budBreakOn, values, ripening }: SeasonInput): SeasonDates {
  const heat = heatClock(site.climate, budBreakOn, values);
  const end = endOfRipening(site, budBreakOn, values);
  const onBeforeEnd = (sum: number): IsoDate | null => {
    const date = heat.dateAt(sum);
    return date !== null && date <= end.on ? date : null;
  };
  return {
    budBreakOn,
    leafOutOn: onBeforeEnd(values.leafOutHeatGdd8) ?? end.on,
    firstFigsOn: onBeforeEnd(values.firstFigHeatGdd8),
    fullLeafOn: onBeforeEnd(values.fullLeafHeatGdd8),
    firstRipeOn: onBeforeEnd(firstRipeHeatGdd8(values, ripening)),
    ripeningEndsOn: end.on,
    endedBy: end.by,
    heat,
  };
}

/** Heat from bud break to the first ripe main-crop fig, GDD8. */
export function firstRipeHeatGdd8(values: SeasonValues, ripening: Ripening): number {
  if (ripening === 'early') return values.firstRipeEarlyHeatGdd8;
  return ripening === 'mid' ? values.firstRipeMidHeatGdd8 : values.firstRipeLateHeatGdd8;
}

type End = { readonly on: IsoDate; readonly by: SeasonDates['endedBy'] };

/**
 * The first of: the normal first frost of autumn after bud break (where it never freezes: a longest season), and the
 * day on which the mean minimum of a normal year, past its summer height, falls below what ripening needs. Frost dates are
 * normals: in one year of two the first frost comes earlier.
 */
function endOfRipening(site: SeasonInput['site'], budBreakOn: IsoDate, values: SeasonValues): End {
  const last: End =
    site.frost === null
      ? { on: addDays(budBreakOn, values.frostFreeSeasonDays), by: 'length of season' }
      : { on: nextOn(site.frost.firstOfAutumn, addDays(budBreakOn, 1)), by: 'frost' };
  const nights = coldNightsFrom(site, budBreakOn, values.ripeningNightMinC);
  return nights !== null && nights < last.on ? { on: nights, by: 'cold nights' } : last;
}

function coldNightsFrom(site: SeasonInput['site'], budBreakOn: IsoDate, limitC: number): IsoDate | null {
  const minC = dailyCourse(site.climate.minC);
  const first = dayNumber(budBreakOn);
  const nights = Array.from({ length: 365 }, (_, i) => minC(dateOf(first + i)));
  const warmest = nights.indexOf(Math.max(...nights));
  const cold = nights.findIndex((c, i) => i >= warmest && c < limitC);
  return cold < 0 ? null : dateOf(first + cold);
}
