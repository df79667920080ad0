/** All that a plan is made from, as it may be in one world. */
import { random01 } from '../../geometry/random.ts';
import type { CellLight } from '../../light/directions.ts';
import { addDays } from '../../season/calendar.ts';
import { type SeasonDates, seasonDates } from '../../season/seasonDates.ts';
import type { DayOfYear, IsoDate, Monthly } from '../../season/site.ts';
import type { FigValues } from '../../species/fig.ts';
import { figParameters } from '../../species/fig.ts';
import type { CutToMake } from '../applyCuts.ts';
import type { PlanInput } from '../input.ts';
import { deviate, type World, withinRange } from './deviate.ts';
import { worldTree } from './worldTree.ts';

/** How years and trees differ, standard deviations; sources in docs/model.md, equation 9.10. */
export const yearSpread = {
  /** Mean temperature of the season. Swiss summers 0.94 (Schaer and others 2004, Nature 427:332, figure from memory); half a year a little less. */
  seasonC: 0.8,
  /** First frost of autumn; common practice. */
  frostDays: 10,
  /** Light straight from the sun over the season: global radiation varies by 4 to 5 % (Ineichen 2011, from memory), the beam by twice that. */
  beamShare: 0.1,
  /** Shoots that the wood holds in balance: "may be wrong by half" at two deviations. */
  balancedShootsLog: 0.25,
  /** A midrib the grower has set is as good as one measured. */
  setMidribShare: 0.05,
  /** What is left of `seasonEndSpreadGdd8` between figs of one year; our choice. */
  withinYearGdd8: 40,
} as const;

const [heatWord, frostWord, beamWord, responseWord, saturationWord, setWord, feedWord] = [
  21, 22, 23, 24, 25, 26, 27,
] as const;
const [earlyWord, leafWord, droopWord, reserveWord, sharingWord, poseWord, rayWord] = [
  31, 32, 33, 34, 35, 36, 37,
] as const;

export interface WorldInput {
  readonly input: PlanInput;
  readonly season: SeasonDates;
  cut<Any extends CutToMake>(cut: Any): Any;
  /** Light known for the plan, in the sunshine of this world's year. */
  readonly lightOf: (light: CellLight) => CellLight;
}

/** @param budBreakOn of the season that the plan is for: the grower knows it */
export function worldInput(input: PlanInput, budBreakOn: IsoDate, world: World): WorldInput {
  const { tree, cut } = worldTree(input.tree, world);
  const values = worldValues(input.values, world);
  const { climate, frost } = input.site;
  const warmerC = yearSpread.seasonC * deviate(world, heatWord);
  const site = {
    ...input.site,
    climate: { ...climate, meanC: warmer(climate.meanC, warmerC), minC: warmer(climate.minC, warmerC) },
    frost: frost && {
      ...frost,
      firstOfAutumn: later(frost.firstOfAutumn, yearSpread.frostDays * deviate(world, frostWord)),
    },
  };
  const there: PlanInput = {
    ...input,
    tree,
    values,
    site,
    leafSeed: seedOf(world.seed, world, poseWord),
    seed: seedOf(input.seed, world, rayWord),
  };
  const sunnier = 1 + yearSpread.beamShare * deviate(world, beamWord);
  return {
    input: there,
    season: seasonDates({ site, budBreakOn, values, ripening: input.ripening }),
    cut,
    lightOf: (light) => withBeam(light, sunnier),
  };
}

const seedOf = (seed: number, { number }: World, word: number): number =>
  Math.floor(4294967296 * random01(seed, number, word));

const warmer = (months: Monthly, byC: number): Monthly => months.map((c) => c + byC) as unknown as Monthly;

/** In a leap year, which knows every day. */
const later = (day: DayOfYear, days: number): DayOfYear => addDays(`2024-${day}`, Math.round(days)).slice(5);

/** The open sky brightens with it; ground and skyline are left as they are. */
function withBeam(light: CellLight, factor: number): CellLight {
  const more = (factor - 1) * light.openBeamParMolM2Day;
  const { below, poses } = light;
  return {
    ...light,
    beam: light.beam.map((energy) => energy * factor),
    openBeamParMolM2Day: light.openBeamParMolM2Day + more,
    openSkyParMolM2Day: light.openSkyParMolM2Day + more,
    ...(below && { below: { ...below, beamParMolM2Day: below.beamParMolM2Day * factor } }),
    ...(poses && { poses: poses.map((pose) => withBeam(pose, factor)) }),
  };
}

/** Least distance between the ends of the light curve and its middle, share of open sky. */
const curveGap = 0.02;

function worldValues(values: FigValues, world: World): FigValues {
  const z = (word: number): number => deviate(world, word);
  const ranged = (name: keyof FigValues, word: number): number => withinRange(name, values[name], z(word));
  const half = ranged('fruitHalfAtFraction', responseWord);
  const isMidribSet = values.leafMidribCm !== figParameters.leafMidribCm.value;
  return {
    ...values,
    fruitHalfAtFraction: half,
    fruitNoneBelowFraction: Math.min(half - curveGap, ranged('fruitNoneBelowFraction', responseWord)),
    fruitFullFromFraction: Math.max(half + curveGap, ranged('fruitFullFromFraction', saturationWord)),
    nodeFruitSetFraction: ranged('nodeFruitSetFraction', setWord),
    figsHeldIn47L: ranged('figsHeldIn47L', feedWord),
    firstRipeEarlyHeatGdd8: ranged('firstRipeEarlyHeatGdd8', earlyWord),
    firstRipeMidHeatGdd8: ranged('firstRipeMidHeatGdd8', earlyWord),
    firstRipeLateHeatGdd8: ranged('firstRipeLateHeatGdd8', earlyWord),
    leafMidribCm: isMidribSet
      ? values.leafMidribCm * (1 + yearSpread.setMidribShare * z(leafWord))
      : ranged('leafMidribCm', leafWord),
    bladeDroopDeg: ranged('bladeDroopDeg', droopWord),
    balancedShootLeafAreaM2:
      values.balancedShootLeafAreaM2 * Math.exp(yearSpread.balancedShootsLog * z(reserveWord)),
    vigourSharingExponent: ranged('vigourSharingExponent', sharingWord),
    seasonEndSpreadGdd8: Math.min(values.seasonEndSpreadGdd8, yearSpread.withinYearGdd8),
  };
}
