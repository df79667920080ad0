/** Light per shoot, traced once and then only weighed anew. */
import type { TreeFile } from '../document/treeFile.ts';
import { canopyScene } from '../plan/canopyScene.ts';
import { ownersTogether } from '../plan/ownersTogether.ts';
import { fullLeafHeatGdd8 } from '../plan/stages.ts';
import type { SeasonDates } from '../season/seasonDates.ts';
import type { Period } from '../season/site.ts';
import { type Asked, type LightOfPeriod, lightOfPeriodSteps } from './askedLight.ts';
import { coarsePairs } from './coarsePairs.ts';
import type { LightAnswer, LightOptions } from './engine.ts';
import { grown, type SeasonedTree, seasonedTree } from './grownTree.ts';
import type { Job } from './job.ts';
import { lightAnswerSteps } from './lightAnswer.ts';
import { defaultWaves } from './planInput.ts';
import { type PairSource, retracing } from './retracing.ts';
import type { TracedTree } from './tracedTree.ts';
import type { UntracedTree } from './untracedTree.ts';
import { fetchPair, type TracedPair, wavePair } from './wavePair.ts';
import { type WaveTables, waveTables } from './waveTables.ts';

/** What of a site no ray depends on: weather and dates tell by the leaves they let grow, the rest only weighs what was traced. */
const weighing = new Set([
  'climate',
  'frost',
  'name',
  'timeZone',
  'viewpoint',
  'groundReflectance',
  'elevationM',
  'skyline',
  'slope',
  'cover',
]);

/** Marks of a branch, and settings, that no ray depends on: the settings only say what light means. */
const rayless = new Set(['pin', 'bearsFigs', 'fruitHalfAtFraction', 'fruitFullFromFraction']);

/** Everything the rays depend on. */
function keyOf(
  { axes, site, standing, settings }: TreeFile,
  { input, season }: SeasonedTree,
  error: number | undefined,
): string {
  const stands = Object.entries(site).filter(([part]) => !weighing.has(part));
  const heatGdd8 = fullLeafHeatGdd8(input, season);
  const rays = [axes, stands, standing, settings, heatGdd8, input.seed, input.leafSeed, input.waves, error];
  // What the grower marked to stay or to go stands there all the same, with figs or without.
  return JSON.stringify(rays, (name, value: unknown) => (rayless.has(name) ? undefined : value));
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

const doing = 'Following the light';

/** Waves as they come in. */
class Waves {
  private readonly tree: UntracedTree;
  private readonly pairs: TracedPair[] = [];
  private readonly tables: WaveTables[] = [];

  constructor(tree: UntracedTree) {
    this.tree = tree;
  }

  *add(pair: TracedPair, done: number): Steps<void> {
    this.pairs.push(pair);
    this.tables.push(yield* telling(waveTables(pair, this.tree), done));
  }

  traced(): TracedTree {
    const { canopy, scene } = this.tree;
    const { ownerCount, seed } = scene;
    const waves = this.pairs.map(({ nodes }) => nodes);
    const leafWaves = this.pairs.map(({ leaves }) => leaves);
    return {
      ...this.tree,
      ledger: { ownerCount, receiverCount: canopy.nodes.length, waves, seed },
      leafLedger: { ownerCount, groupCount: canopy.leaves.length, waves: leafWaves, seed },
      tables: [...this.tables],
    };
  }
}

/** Passes on that something goes on, and returns what it returns. */
function* telling<Result>(steps: Generator<void, Result, unknown>, done: number): Steps<Result> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield { done, doing };
  }
}

/** How much of the bar a first picture takes. */
const coarsePart = 0.04;

/** A first picture from few rays, where the first whole waves would take long. */
function* coarseSteps(tree: UntracedTree, asked: Asked, light: LightOfPeriod): Steps<void> {
  const pairs = coarsePairs(tree.scene, light.whole);
  if (pairs.length === 0) return;
  const waves = new Waves(tree);
  const share = (pair: number): number => (coarsePart * pair) / pairs.length;
  for (const i of pairs.keys())
    yield* waves.add(yield* fetchPair(pairs, i, share(i), share(i + 1)), share(i + 1));
  const steps = lightAnswerSteps(waves.traced(), asked, { ...light, hours: [] });
  const partial = yield* telling(steps, coarsePart);
  yield { done: coarsePart, doing, partial };
}

/** Waves until there are enough of them, or the error asked for is reached. */
function* wholeSteps(
  tree: UntracedTree,
  pairs: PairSource,
  asked: Asked,
  light: LightOfPeriod,
  error: number | undefined,
): Steps<Whole> {
  const waves = new Waves(tree);
  const most = tree.input.waves;
  const share = (pair: number): number => coarsePart + ((1 - coarsePart) * pair) / most;
  for (let count = 1; ; count++) {
    const done = share(count);
    yield* waves.add(yield* pairs(count - 1, share(count - 1), done), done);
    const isLast = count === most;
    const isJudged = error !== undefined && count >= fewestWaves;
    if (!isLast && !isJudged && !givesPartialAfter(count)) continue;
    const traced = waves.traced();
    const answer = yield* telling(lightAnswerSteps(traced, asked, light), done);
    if (isLast || (isJudged && medianError(answer) <= error)) return { answer, traced };
    yield { done, doing, partial: answer };
  }
}

/**
 * Light of a tree, coarse first.
 * @param kept the tree traced last: where nothing that the rays depend on has changed it is only weighed anew, where a part of the
 * tree has moved only that part is traced again
 */
export function* lightJob(file: TreeFile, options: LightOptions, kept: TracedTree | null): Steps<Whole> {
  const { error, waves = error === undefined ? defaultWaves : mostWaves } = options;
  const seasoned = seasonedTree(file, { ...options, waves });
  const asked = askedOf(options, seasoned.season);
  const key = keyOf(file, seasoned, error);
  if (kept?.key === key) {
    yield { done: 0.5, doing: 'Weighing the light' };
    const traced = { ...kept, ...seasoned };
    const light = yield* telling(lightOfPeriodSteps(seasoned.input, asked), 0.5);
    return { answer: yield* telling(lightAnswerSteps(traced, asked, light), 0.5), traced };
  }
  yield { done: 0, doing: 'Growing the leaves' };
  const { canopy } = grown(seasoned);
  const scene = ownersTogether(canopyScene(canopy, seasoned.input));
  const tree = { key, canopy, scene, ...seasoned };
  yield { done: 0, doing };
  const light = yield* telling(lightOfPeriodSteps(seasoned.input, asked), 0);
  yield* coarseSteps(tree, asked, light);
  const known = kept === null || error !== undefined ? null : retracing(kept, tree);
  if (known !== null) return yield* wholeSteps(tree, known, asked, light, error);
  const pairs = Array.from({ length: waves }, (_, wave) => wavePair({ scene, wave }));
  const fetched: PairSource = (i, from, to) => fetchPair(pairs, i, from, to);
  return yield* wholeSteps(tree, fetched, asked, light, error);
}
