/** Ripe figs of one tree in several worlds: the plan beside its rivals, each on the crown that it would grow itself. */

import type { TreeFile } from '../../src/document/treeFile.ts';
import { planInputOf } from '../../src/engine/planInput.ts';
import { cutEnds, goneIds } from '../../src/plan/gone.ts';
import { type PlanResult, planJob } from '../../src/plan/planJob.ts';
import type { Score } from '../../src/plan/score.ts';
import { untracedSeason } from '../../src/plan/tracedSeason.ts';
import { traceUpTo } from '../../src/plan/traceUpTo.ts';
import { trialContext, tryThese } from '../../src/plan/trial.ts';
import { workYear } from '../../src/plan/windows.ts';
import { worldInput } from '../../src/plan/worlds/worldInput.ts';
import { atRandom, type Cuts, evenly, inwardGone, takenOf } from './rivals.ts';

/** Worlds that the plan was not made on: as its own, but drawn by another seed. */
const worldCount = 8;
const worldSeed = 977;
const draws = 12;
/** Waves of rays of each judgement: the noise of one world is below that between worlds. */
const waves = 2;

export interface Row {
  readonly rival: string;
  readonly shoots: number;
  readonly figs: number;
  /** Plan less rival, pair by pair in the same world. */
  readonly ahead: readonly number[];
}

export interface Verdict {
  readonly figs: number;
  readonly shoots: number;
  /** Shoots or buds that the search was free to take, and what it takes of them. */
  readonly free: number;
  readonly taken: number;
  readonly otherCuts: number;
  readonly rows: readonly Row[];
}

export function judge(file: TreeFile): Verdict {
  const result = drain(planJob(planInputOf(file, {})));
  const scoreOf = scorer(result);
  const plan = Array.from({ length: worldCount }, (_, world) => scoreOf(world, result.plan.cuts));
  const row = (rival: string, cutsOf: (pair: number) => Cuts, pairs = worldCount): Row => {
    const scores = Array.from({ length: pairs }, (_, p) => scoreOf(p % worldCount, cutsOf(p)));
    return {
      rival,
      shoots: mean(scores.map(({ shootCount }) => shootCount)),
      figs: mean(scores.map(({ ripeFigs }) => ripeFigs)),
      ahead: scores.map(({ ripeFigs }, p) => (plan[p % worldCount]?.ripeFigs ?? Number.NaN) - ripeFigs),
    };
  };
  const taken = takenOf(result).length;
  return {
    figs: mean(plan.map(({ ripeFigs }) => ripeFigs)),
    shoots: mean(plan.map(({ shootCount }) => shootCount)),
    free: result.made.work.choice.free.length,
    taken,
    otherCuts: result.plan.cuts.length - taken,
    rows: [
      row('nothing done', () => []),
      row('as many, by chance', (draw) => atRandom(result, draw, false), draws),
      row('as many, by chance, no branch losing its end', (draw) => atRandom(result, draw, true), draws),
      row('as many, at even steps', () => evenly(result)),
      row('all that sets out inward', () => inwardGone(result)),
    ],
  };
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** What any cuts are worth in a world, on the crown that the tree grows there with them. */
function scorer({ made, trial }: PlanResult): (world: number, cuts: Cuts) => Score {
  const { input } = made;
  const { budBreakOn } = workYear(input).season;
  const { stages, light } = trial.traced;
  return (number, cuts) => {
    const there = worldInput({ ...input, waves }, budBreakOn, { number, seed: worldSeed });
    const moved = cuts.map((cut) => ({ ...there.cut(cut), id: cut.target }));
    const gone = goneIds(there.input.tree, moved);
    const grown = untracedSeason(there.input, there.season, gone, cutEnds(moved), (_, of) =>
      there.lightOf(stages.find(({ stage }) => stage.name === of)?.light ?? light),
    );
    const traced = drain(traceUpTo(waves, grown, there.input));
    const year = Number(budBreakOn.slice(0, 4));
    return tryThese(trialContext(traced, moved, there.input, year), moved).score;
  };
}

function drain<Result>(steps: Generator<unknown, Result, void>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
