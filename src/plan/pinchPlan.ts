/** When to pinch, and at which leaf, so that figs ripen in warm, dry weeks and ahead of the frost. */
import { addDays } from '../season/calendar.ts';
import { dayRadiation } from '../season/dayRadiation.ts';
import { dailyCourse } from '../season/monthly.ts';
import type { IsoDate, Period } from '../season/site.ts';
import { CropCount, figToRipeGdd8 } from './crop.ts';
import { shootOf } from './figSites.ts';
import { type HarvestWeek, harvestByWeek, peakWeek } from './harvest.ts';
import type { PlanInput } from './input.ts';
import { type NodeFigs, type Pinch, type PinchModel, pinchHeatGdd8, ripeningFigs } from './pinch.ts';
import { grows, type TracedSeason, type TracedStage } from './tracedSeason.ts';
import { type TrialContext, type TrialCut, tryThese } from './trial.ts';
import type { WorkYear } from './windows.ts';

/** Figs of one harvest. */
export interface Harvest {
  readonly ripeFigs: number;
  /** Those that ripen in warm, dry weeks. */
  readonly inGoodWeeks: number;
  /** First day of the week with most figs; null where none ripen. */
  readonly peakFrom: IsoDate | null;
}

export interface PinchAdvice extends Pinch {
  readonly when: Period;
  readonly without: Harvest;
  readonly with: Harvest;
  /** Weeks in which figs ripen, with and without the pinch. */
  readonly weeks: readonly {
    readonly from: IsoDate;
    readonly isGood: boolean;
    readonly without: number;
    readonly with: number;
  }[];
}

/** A fig that ripens in a cold or wet week counts as this much of one; our choice. */
const worthInBadWeek = 0.5;
/** A pinch that brings less than this is not worth going round the tree for; our choice. */
const leastGain = 0.02;
/** Weeks with fewer figs than this, both ways, are left out. */
const leastFigs = 0.05;

/** For the shoots that the plan keeps. Null in rest, for a tree sketched in leaf, and where no pinch brings more. */
export function advisePinch(
  trial: TrialContext,
  cuts: readonly TrialCut[],
  input: PlanInput,
  year: WorkYear,
): PinchAdvice | null {
  if (year.stage === 'rest' || !grows(input)) return null;
  const nodes = nodeFigs(trial, cuts);
  const goodWeek = goodWeeks(input);
  const harvest = (pinch: Pinch | null): readonly HarvestWeek[] => {
    const model = pinchModel(trial.traced, input, year, pinch);
    return harvestByWeek(ripeningFigs(nodes, pinch, model), year.season, input.values);
  };
  const worth = (weeks: readonly HarvestWeek[]): number =>
    weeks.reduce((sum, { from, figs }) => sum + figs * (goodWeek(from) ? 1 : worthInBadWeek), 0);
  const untouched = harvest(null);
  let best: { pinch: Pinch; weeks: readonly HarvestWeek[]; worth: number } | null = null;
  for (const pinch of possiblePinches(nodes, input, year)) {
    const weeks = harvest(pinch);
    const found = { pinch, weeks, worth: worth(weeks) };
    if (found.worth > (best?.worth ?? (1 + leastGain) * worth(untouched))) best = found;
  }
  if (best === null) return null;
  const { pinch, weeks } = best;
  return {
    ...pinch,
    when: windowOf(pinch.atLeaf, input, year),
    without: summed(untouched, goodWeek),
    with: summed(weeks, goodWeek),
    weeks: weeks
      .map(({ from, figs }, i) => {
        return { from, isGood: goodWeek(from), without: untouched[i]?.figs ?? 0, with: figs };
      })
      .filter((week) => Math.max(week.with, week.without) >= leastFigs),
  };
}

/** Figs set on what the plan keeps, nodes alike together. */
function nodeFigs(trial: TrialContext, cuts: readonly TrialCut[]): NodeFigs[] {
  const { keep } = tryThese(trial, cuts);
  const { sites, crop, stages } = trial.traced;
  const { canopy } = stages.at(-1) as TracedStage;
  const indexOfOwner = new Map(canopy.shoots.map((shoot, i) => [shoot.owner, i]));
  const shootIndex = (owner: number): number => shootOf(canopy, indexOfOwner, owner) ?? -1;
  const leaves = new Int32Array(canopy.shoots.length);
  for (const { owner } of canopy.nodes) leaves[shootIndex(owner)] = (leaves[shootIndex(owner)] ?? 0) + 1;
  const light = trial.stages.map(({ share }) => share);
  const count = new CropCount(sites, light, keep, crop);
  const alike = new Map<string, NodeFigs>();
  for (let i = 0; i < sites.count; i++) {
    const owner = sites.owner[i] as number;
    if (keep[owner] !== 1) continue;
    const shoot = shootIndex(owner);
    const bearing = sites.bearing[i] as number;
    const node = bearing + (canopy.shoots[shoot]?.blindNodes ?? 0);
    const one = { node, bearing, leaves: leaves[shoot] ?? 0 };
    const key = `${node} ${bearing} ${one.leaves}`;
    alike.set(key, { ...one, figs: (alike.get(key)?.figs ?? 0) + count.setAt(i) });
  }
  return [...alike.values()];
}

function pinchModel(
  { crop }: TracedSeason,
  input: PlanInput,
  { season }: WorkYear,
  pinch: Pinch | null,
): PinchModel {
  const { values } = input;
  const on = pinch === null ? null : season.heat.dateAt(pinchHeatGdd8(pinch.atLeaf, values));
  const breakGdd8 =
    on === null ? 0 : season.heat.sumAt(addDays(on, values.lateralBreakDays)) - season.heat.sumAt(on);
  return { values, crop, figToRipeGdd8: figToRipeGdd8(input), breakGdd8 };
}

/** From the lowest leaf of practice to the highest at which a shoot still has a tip; none that comes too late, or is over. */
function possiblePinches(nodes: readonly NodeFigs[], input: PlanInput, year: WorkYear): Pinch[] {
  const { pinchLowestLeaf, pinchHighestLeaf } = input.values;
  const mostLeaves = Math.max(0, ...nodes.map(({ leaves }) => leaves));
  const pinches: Pinch[] = [];
  for (let atLeaf = pinchLowestLeaf; atLeaf <= pinchHighestLeaf && atLeaf < mostLeaves; atLeaf++) {
    const on = year.season.heat.dateAt(pinchHeatGdd8(atLeaf, input.values));
    if (on === null || on > year.thinning.to || windowOf(atLeaf, input, year).to < input.date) continue;
    pinches.push({ atLeaf, laterals: 'rub off all' }, { atLeaf, laterals: 'keep one' });
  }
  return pinches;
}

/** From the day on which shoots have that leaf to the one on which the next but one unfolds; never into the last weeks before frost. */
function windowOf(atLeaf: number, { values, date }: PlanInput, { season, thinning }: WorkYear): Period {
  const dateAt = (gdd8: number): IsoDate => season.heat.dateAt(gdd8) ?? season.ripeningEndsOn;
  const from = dateAt(pinchHeatGdd8(atLeaf, values));
  const to = dateAt(pinchHeatGdd8(atLeaf + 1, values));
  return { from: from < date && date <= to ? date : from, to: to > thinning.to ? thinning.to : to };
}

/** Whether a week that begins on a day is warm enough and sunny enough: of its fourth day, in a normal year. */
function goodWeeks({ site, values }: PlanInput): (from: IsoDate) => boolean {
  const meanC = dailyCourse(site.climate.meanC);
  return (from) => {
    const day = addDays(from, 3);
    return meanC(day) >= values.ripeningWarmC && dayRadiation(site, day).clearness >= values.dryClearness;
  };
}

function summed(weeks: readonly HarvestWeek[], isGood: (from: IsoDate) => boolean): Harvest {
  const sum = (some: readonly HarvestWeek[]): number => some.reduce((all, { figs }) => all + figs, 0);
  return {
    ripeFigs: sum(weeks),
    inGoodWeeks: sum(weeks.filter(({ from }) => isGood(from))),
    peakFrom: peakWeek(weeks),
  };
}
