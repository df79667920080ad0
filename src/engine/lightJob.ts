/** Light per shoot, traced once and then only weighed anew. */
import type { TreeFile } from '../document/treeFile.ts';
import { type CanopyScene, canopyScene } from '../plan/canopyScene.ts';
import { ownersTogether, ownersToldApart } from '../plan/ownersTogether.ts';
import { fullLeafHeatGdd8 } from '../plan/stages.ts';
import type { SeasonDates } from '../season/seasonDates.ts';
import type { Period } from '../season/site.ts';
import { type Asked, type LightOfPeriod, lightOfPeriod } from './askedLight.ts';
import { coarsePairs } from './coarsePairs.ts';
import type { LightAnswer, LightOptions } from './engine.ts';
import { grown, type SeasonedTree, seasonedTree } from './grownTree.ts';
import type { Job } from './job.ts';
import { lightAnswer } from './lightAnswer.ts';
import { defaultWaves } from './planInput.ts';
import type { TracedTree } from './tracedTree.ts';
import { fetchPair, type TracedPair, type WavePair, wavePair } from './wavePair.ts';

/** What of a site no ray depends on: weather and dates tell by the leaves they let grow, the rest only weighs what was traced. */
const weighing = new Set([
  'climate',
  'frost',
  'name',
  'timeZone',
  'viewpoint',
  'groundReflectance',
  'skyline',
  'slope',
  'cover',
]);

/** Everything the rays depend on. */
function keyOf(
  { axes, site, standing, settings }: TreeFile,
  { input, season }: SeasonedTree,
  error: number | undefined,
): string {
  const stands = Object.entries(site).filter(([part]) => !weighing.has(part));
  const heatGdd8 = fullLeafHeatGdd8(input, season);
  return JSON.stringify([axes, stands, standing, settings, heatGdd8, input.seed, input.waves, error]);
}

/** The season in which light counts: from leaf-out to the last useful fig. */
export const usefulSeason = ({ leafOutOn, ripeningEndsOn }: SeasonDates): Period => ({
  from: leafOutOn,
  to: ripeningEndsOn,
});

const askedOf = (options: LightOptions, season: SeasonDates): Asked => ({
  period: options.period ?? usefulSeason(season),
  weather: options.weather ?? 'normal',
  sky: options.sky ?? 'uniform',
  solarHour: options.solarHour ?? null,
});

/** Coarse answers are given after so many waves; two are the least that can tell their doubt. */
const givesPartialAfter = (waves: number): boolean => waves >= 2 && Number.isInteger(Math.log2(waves));
/** Where an error is asked for: the spread of fewer waves is no measure of it, more are not traced. */
const [fewestWaves, mostWaves] = [4, 64];

function medianError({ report }: LightAnswer): number {
  const errors = report.shoots.map(({ standardError }) => standardError).sort((a, b) => a - b);
  return errors[errors.length >> 1] ?? 0;
}

type Whole = { readonly answer: LightAnswer; readonly traced: TracedTree };
type Steps<Result> = Job<Result, LightAnswer>;
/** A tree that is yet to be traced. */
type Untraced = Omit<TracedTree, 'ledger' | 'leafLedger'>;

function tracedBy(tree: Untraced, pairs: readonly TracedPair[]): TracedTree {
  const { canopy, input } = tree;
  const ownerCount = ownersToldApart(canopy.nodes.length, canopy.owners.length);
  const { seed } = input;
  const waves = pairs.map(({ nodes }) => nodes);
  const leafWaves = pairs.map(({ leaves }) => leaves);
  return {
    ...tree,
    ledger: { ownerCount, receiverCount: canopy.nodes.length, waves, seed },
    leafLedger: { ownerCount, groupCount: canopy.leaves.length, waves: leafWaves, seed },
  };
}

/** How much of the bar a first picture takes. */
const coarsePart = 0.04;

/** A first picture from few rays, where the first whole waves would take long. */
function* coarseSteps(tree: Untraced, scene: CanopyScene, asked: Asked, light: LightOfPeriod): Steps<void> {
  const pairs = coarsePairs(scene, light.whole);
  if (pairs.length === 0) return;
  const traced: TracedPair[] = [];
  for (const i of pairs.keys()) {
    traced.push(
      yield* fetchPair(pairs, i, (coarsePart * i) / pairs.length, (coarsePart * (i + 1)) / pairs.length),
    );
  }
  const partial = lightAnswer(tracedBy(tree, traced), asked, { ...light, hours: [] });
  yield { done: coarsePart, doing: 'Following the light', partial };
}

/** Waves until there are enough of them, or the error asked for is reached. */
function* wholeSteps(
  tree: Untraced,
  pairs: readonly WavePair[],
  asked: Asked,
  light: LightOfPeriod,
  error: number | undefined,
): Steps<Whole> {
  const pairsTraced: TracedPair[] = [];
  const share = (pair: number): number => coarsePart + ((1 - coarsePart) * pair) / pairs.length;
  for (let waves = 1; ; waves++) {
    pairsTraced.push(yield* fetchPair(pairs, waves - 1, share(waves - 1), share(waves)));
    const isLast = waves === pairs.length;
    const isJudged = error !== undefined && waves >= fewestWaves;
    if (!isLast && !isJudged && !givesPartialAfter(waves)) continue;
    const traced = tracedBy(tree, pairsTraced);
    const answer = lightAnswer(traced, asked, light);
    if (isLast || (isJudged && medianError(answer) <= error)) return { answer, traced };
    yield { done: share(waves), doing: 'Following the light', partial: answer };
  }
}

/**
 * Light of a tree, coarse first.
 * @param kept the tree traced last, used again when nothing that the rays depend on has changed
 */
export function* lightJob(file: TreeFile, options: LightOptions, kept: TracedTree | null): Steps<Whole> {
  const { error, waves = error === undefined ? defaultWaves : mostWaves } = options;
  const seasoned = seasonedTree(file, { ...options, waves });
  const asked = askedOf(options, seasoned.season);
  const key = keyOf(file, seasoned, error);
  if (kept?.key === key) {
    yield { done: 0.5, doing: 'Weighing the light' };
    const traced = { ...kept, ...seasoned };
    return { answer: lightAnswer(traced, asked), traced };
  }
  yield { done: 0, doing: 'Growing the leaves' };
  const { canopy } = grown(seasoned);
  const tree = { key, canopy, ...seasoned };
  const scene = ownersTogether(canopyScene(canopy, seasoned.input));
  const light = lightOfPeriod(seasoned.input, asked);
  yield* coarseSteps(tree, scene, asked, light);
  const pairs = Array.from({ length: waves }, (_, wave) => wavePair({ scene, wave }));
  return yield* wholeSteps(tree, pairs, asked, light, error);
}
