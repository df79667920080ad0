/** Light per shoot, traced once and then only weighed anew. */
import type { TreeFile } from '../document/treeFile.ts';
import { type CanopyScene, canopyScene } from '../plan/canopyScene.ts';
import type { SeasonDates } from '../season/seasonDates.ts';
import type { Period } from '../season/site.ts';
import { type Asked, lightOf } from './askedLight.ts';
import { coarsePairs } from './coarsePairs.ts';
import type { LightAnswer, LightOptions } from './engine.ts';
import { grownTree } from './grownTree.ts';
import type { Job } from './job.ts';
import { lightAnswer } from './lightAnswer.ts';
import type { TracedTree } from './tracedTree.ts';
import { fetchPair, type TracedPair, wavePair } from './wavePair.ts';

const keyOf = (
  { axes, site, standing, season, settings, cultivar }: TreeFile,
  options: LightOptions,
): string => JSON.stringify([axes, site, standing, season, settings, cultivar, options.seed, options.waves]);

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

type Whole = { readonly answer: LightAnswer; readonly traced: TracedTree };
type Steps<Result> = Job<Result, LightAnswer>;
/** A tree that is yet to be traced. */
type Untraced = Omit<TracedTree, 'ledger' | 'leafLedger'>;

function tracedBy(tree: Untraced, pairs: readonly TracedPair[]): TracedTree {
  const { canopy, input } = tree;
  const [ownerCount, { seed }] = [canopy.owners.length, input];
  const waves = pairs.map(({ nodes }) => nodes);
  const leafWaves = pairs.map(({ leaves }) => leaves);
  return {
    ...tree,
    ledger: { ownerCount, receiverCount: canopy.nodes.length, waves, seed },
    leafLedger: { ownerCount, groupCount: canopy.shoots.length, waves: leafWaves, seed },
  };
}

/** How much of the bar a first picture takes. */
const coarsePart = 0.04;

/** A first picture from few rays, where the first whole waves would take long. */
function* coarseSteps(tree: Untraced, scene: CanopyScene, asked: Asked): Steps<void> {
  const pairs = coarsePairs(scene, lightOf(tree.input, asked));
  if (pairs.length === 0) return;
  const traced: TracedPair[] = [];
  for (const i of pairs.keys()) {
    traced.push(
      yield* fetchPair(pairs, i, (coarsePart * i) / pairs.length, (coarsePart * (i + 1)) / pairs.length),
    );
  }
  const partial = lightAnswer(tracedBy(tree, traced), asked);
  yield { done: coarsePart, doing: 'Following the light', partial };
}

/**
 * Light of a tree, coarse first.
 * @param kept the tree traced last, used again when nothing that the rays depend on has changed
 */
export function* lightJob(file: TreeFile, options: LightOptions, kept: TracedTree | null): Steps<Whole> {
  const key = keyOf(file, options);
  if (kept?.key === key) {
    yield { done: 0.5, doing: 'Weighing the light' };
    return { answer: lightAnswer(kept, askedOf(options, kept.season)), traced: kept };
  }
  yield { done: 0, doing: 'Growing the leaves' };
  const { input, season, canopy } = grownTree(file, options);
  const tree = { key, input, season, canopy };
  const asked = askedOf(options, season);
  const scene = canopyScene(canopy, input);
  yield* coarseSteps(tree, scene, asked);
  const pairs = Array.from({ length: input.waves }, (_, wave) => wavePair({ scene, wave }));
  const traced: TracedPair[] = [];
  for (const i of pairs.keys()) {
    const share = (pair: number): number => coarsePart + ((1 - coarsePart) * pair) / pairs.length;
    traced.push(yield* fetchPair(pairs, i, share(i), share(i + 1)));
    if (traced.length < pairs.length && givesPartialAfter(traced.length)) {
      const partial = lightAnswer(tracedBy(tree, traced), asked);
      yield { done: share(i + 1), doing: 'Following the light', partial };
    }
  }
  const whole = tracedBy(tree, traced);
  return { answer: lightAnswer(whole, asked), traced: whole };
}
