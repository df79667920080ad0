/** One world: what the plan is worth there, and which of its cuts the search would miss. */
import type { CutEnd } from '../../growth/cutEnds.ts';
import type { CellLight } from '../../light/directions.ts';
import type { Wave } from '../../light/ledger.ts';
import type { IsoDate } from '../../season/site.ts';
import { applyCuts, type CutToMake } from '../applyCuts.ts';
import { type Candidate, candidatesOf } from '../candidates.ts';
import { canopyScene } from '../canopyScene.ts';
import { waveSteps } from '../canopyWave.ts';
import { cutEnds, goneIds } from '../gone.ts';
import type { PlanInput } from '../input.ts';
import { ruleContext } from '../ruleContext.ts';
import type { LightStage } from '../stages.ts';
import { type ThinProblem, thinProblem } from '../thin.ts';
import { grows, type TracedSeason, type TracedStage, untracedSeason } from '../tracedSeason.ts';
import type { Stage } from '../windows.ts';
import { type WorldInput, worldInput } from './worldInput.ts';

/** Light of the plan's own season. */
export interface SeasonLights {
  readonly season: CellLight;
  readonly stages: readonly { readonly name: LightStage['name']; readonly light: CellLight }[];
}

/** A plan to be looked at in one world, as plain data. */
export interface WorldTask {
  readonly at: 'world';
  readonly input: PlanInput;
  /** From 0. */
  readonly world: number;
  readonly budBreakOn: IsoDate;
  readonly stage: Stage;
  readonly lights: SeasonLights;
  /** Cuts that are made whatever the search finds, tips among them. */
  readonly settled: readonly CutToMake[];
  /** Ids that the search was free to take, and those of them that the plan takes. */
  readonly free: readonly string[];
  readonly taken: readonly string[];
  /** For some of the taken: the one that would go in its place were it kept. */
  readonly rivals: readonly (string | null)[];
  /** Whether the tree left alone is wanted, too. */
  readonly withNothing: boolean;
  /** One direction of the sky and the sun in so many is traced. */
  readonly every: number;
}

export interface WorldFindings {
  /** Ripe figs of the main crop with the plan; and with nothing done, where that was wanted. */
  readonly planFigs: number;
  readonly nothingFigs: number | null;
  /** Per cut taken: by how much the plan is worth more than without it, and than with its rival in its place, figs; null without a rival. */
  readonly overKeeping: readonly number[];
  readonly overRival: readonly (number | null)[];
}

/** Yields the share done, 0 to 1. */
export function* worldSteps(task: WorldTask): Generator<number, WorldFindings, void> {
  const { settled, free, taken } = task;
  const there = worldInput(task.input, task.budBreakOn, { number: task.world, seed: task.input.leafSeed });
  const cuts = settled.map((cut) => there.cut(cut));
  const ends = cutEnds(cuts);
  const gone = goneIds(there.input.tree, cuts);
  const notSharing = new Set([...gone, ...taken]);
  const planned = yield* tracedIn(there, task, grows(there.input) ? notSharing : new Set(), ends);
  const found = candidatesIn(there.input, cuts, task.stage);
  const { tree, values } = there.input;
  const problem = thinProblem({
    traced: planned,
    tree,
    values,
    candidates: free.map((id) => found.get(id) as Candidate),
    pinned: [...found.values()].filter(({ pinnedKeep }) => pinnedKeep),
    settled: gone,
  });
  const verdict = judged(problem, task);
  if (!task.withNothing) return { ...verdict, nothingFigs: null };
  const isSame = notSharing.size === 0 || !grows(there.input);
  yield 0.5;
  const alone = isSame ? planned : yield* tracedIn(there, task, new Set(), []);
  const nothing = thinProblem({
    traced: alone,
    tree,
    values,
    candidates: [],
    pinned: [],
    settled: new Set(),
  });
  return { ...verdict, nothingFigs: nothing.figures().ripeFigs };
}

function judged(
  problem: ThinProblem,
  { free, taken, rivals }: WorldTask,
): Omit<WorldFindings, 'nothingFigs'> {
  const memberOf = new Map(free.map((id, i) => [id, i]));
  const members = taken.map((id) => memberOf.get(id) as number);
  for (const member of members) problem.flip(member);
  const planFigs = problem.figures().ripeFigs;
  const worth = problem.value();
  const overKeeping: number[] = [];
  const overRival: (number | null)[] = [];
  members.forEach((member, i) => {
    problem.flip(member);
    overKeeping.push(worth - problem.value());
    const rival = memberOf.get(rivals[i] ?? '');
    if (rival === undefined) overRival.push(null);
    else {
      problem.flip(rival);
      overRival.push(worth - problem.value());
      problem.flip(rival);
    }
    problem.flip(member);
  });
  return { planFigs, overKeeping, overRival };
}

function candidatesIn(
  input: PlanInput,
  settled: readonly CutToMake[],
  stage: Stage,
): ReadonlyMap<string, Candidate> {
  const left = settled.length === 0 ? input.tree : applyCuts(input.tree, settled);
  const context = ruleContext(left, input.stance, input.values);
  return new Map(candidatesOf(context, stage).map((one) => [one.id, one]));
}

/** The season there with one thinned-out wave a stage. */
function* tracedIn(
  { input, season, lightOf }: WorldInput,
  { lights, every, world }: WorldTask,
  notSharing: ReadonlySet<string>,
  ends: readonly CutEnd[],
): Generator<number, TracedSeason, void> {
  const known = new Map<string, CellLight>([
    ...lights.stages.map(({ name, light }) => [name, lightOf(light)] as const),
    ['season', lightOf(lights.season)],
  ]);
  const grown = untracedSeason(input, season, notSharing, ends, (_, of) => {
    return (known.get(of) ?? known.get('season')) as CellLight;
  });
  const stages: TracedStage[] = [];
  for (const stage of grown.stages) {
    const onlyFor = stage === grown.full ? grown.light : stage.light;
    const scene = canopyScene(stage.canopy, input, stage.asked);
    const coarse = every > 1 ? { coarse: { every, from: world % every } } : {};
    const wave: Wave = yield* waveSteps({ at: 'nodes', scene, wave: 0, onlyFor, ...coarse });
    stages.push({ ...stage, ledger: { ...stage.ledger, waves: [wave] } });
  }
  return { ...grown, stages, full: stages[grown.stages.indexOf(grown.full)] as TracedStage };
}
