/** The stages of a season at which light is asked for: the canopy of each stands for a stretch of days. */
import { addDays, dayNumber } from '../season/calendar.ts';
import { firstRipeHeatGdd8, type SeasonDates } from '../season/seasonDates.ts';
import type { Period } from '../season/site.ts';
import type { PlanInput } from './input.ts';

export interface LightStage {
  readonly name: 'first figs' | 'full leaf' | 'last useful fig';
  /** Heat sum since bud break at which its canopy is grown, GDD8. */
  readonly heatGdd8: number;
  /** The days it stands for. Stages follow each other without a gap, from leaf-out to the end of ripening. */
  readonly period: Period;
  /** Heat sums at the two ends of those days, GDD8. */
  readonly fromGdd8: number;
  readonly toGdd8: number;
}

type StageInput = Pick<PlanInput, 'values' | 'ripening'>;

/** Heat sum of full leaf, or of the end of a season too short for it, GDD8. */
export const fullLeafHeatGdd8 = (
  { values }: Pick<PlanInput, 'values'>,
  { heat, ripeningEndsOn }: SeasonDates,
): number => Math.min(values.fullLeafHeatGdd8, heat.sumAt(ripeningEndsOn));

/** Heat sum at which that fig appears which has an even chance to ripen, GDD8: later ones are of little use. */
function lastUsefulFigGdd8({ values, ripening }: StageInput, { heat, ripeningEndsOn }: SeasonDates): number {
  const spare = heat.sumAt(ripeningEndsOn) - firstRipeHeatGdd8(values, ripening);
  return values.firstFigHeatGdd8 + Math.max(0, spare);
}

/**
 * First figs visible, full leaf, and the day on which the last useful fig appears; those that come within one leaf's heat of
 * full leaf, or not at all, are left out. Each stands for the days nearer to it, by heat, than to the others.
 */
export function lightStages(input: StageInput, season: SeasonDates): readonly LightStage[] {
  const { values } = input;
  const full = fullLeafHeatGdd8(input, season);
  const first = values.firstFigHeatGdd8;
  const last = lastUsefulFigGdd8(input, season);
  const wanted: Pick<LightStage, 'name' | 'heatGdd8'>[] = [{ name: 'full leaf', heatGdd8: full }];
  if (first < full - values.phyllochronGdd8) wanted.unshift({ name: 'first figs', heatGdd8: first });
  if (last > full + values.phyllochronGdd8) wanted.push({ name: 'last useful fig', heatGdd8: last });
  return spread(wanted, season);
}

/** One stage for the whole season, at full leaf: for a tree whose leaves stand as they were measured. */
export const wholeSeason = (input: StageInput, season: SeasonDates): readonly LightStage[] =>
  spread([{ name: 'full leaf', heatGdd8: fullLeafHeatGdd8(input, season) }], season);

function spread(
  wanted: readonly Pick<LightStage, 'name' | 'heatGdd8'>[],
  { heat, leafOutOn, ripeningEndsOn }: SeasonDates,
): readonly LightStage[] {
  const stages: LightStage[] = [];
  let from = leafOutOn;
  for (const [i, { name, heatGdd8 }] of wanted.entries()) {
    const next = wanted[i + 1];
    const changesOn = next === undefined ? null : heat.dateAt((heatGdd8 + next.heatGdd8) / 2);
    const to = changesOn === null ? ripeningEndsOn : addDays(changesOn, -1);
    if (dayNumber(to) < dayNumber(from)) continue;
    const nextFrom = addDays(to, 1);
    const period = { from, to };
    stages.push({ name, heatGdd8, period, fromGdd8: heat.sumAt(from), toGdd8: heat.sumAt(nextFrom) });
    from = nextFrom;
  }
  return stages;
}
