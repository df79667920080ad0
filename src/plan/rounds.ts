/** Cut, regrow, look again: fewer buds make stronger shoots, so the keep-set and the canopy have to agree. */
import type { CellLight } from '../light/directions.ts';
import type { SeasonDates } from '../season/seasonDates.ts';
import type { Candidate } from './candidates.ts';
import type { PlanInput } from './input.ts';
import { searchKeepSet } from './search.ts';
import { type ThinProblem, thinProblem } from './thin.ts';
import { type TracedCanopy, traceCanopy } from './tracedCanopy.ts';

/** Rounds of search at most; the first of them from scratch, the others from the set before. */
const mostRounds = 3;
/** Waves of rays for the search; the scores are taken with all that were asked for. */
const searchWaves = 2;

/** What is being done, in plain words, and how far it is, 0 to 1. */
export interface PlanProgress {
  readonly done: number;
  readonly doing: string;
}

export type PlanSteps<Result> = Generator<PlanProgress, Result, void>;

export interface Thinned {
  /** The tree left alone, and the tree of the plan with its removed buds grown at the same vigour. */
  readonly asItIs: TracedCanopy;
  readonly thinned: TracedCanopy;
  /** Ids taken by the search. */
  readonly taken: ReadonlySet<string>;
}

export interface RoundsInput {
  readonly plan: PlanInput;
  readonly season: SeasonDates;
  readonly light: CellLight;
  readonly candidates: readonly Candidate[];
  readonly pinned: readonly Candidate[];
  /** Ids of all that goes whatever the search finds. */
  readonly settled: ReadonlySet<string>;
}

/** The keep-set of the last round that is worth most on its own regrown canopy, and the two canopies to compare. */
export function* thinInRounds(input: RoundsInput): PlanSteps<Thinned> {
  const { plan, season, settled, candidates } = input;
  const coarse = { ...input, plan: { ...plan, waves: Math.min(plan.waves, searchWaves) } };
  const taken = candidates.length === 0 ? new Set<string>() : yield* within(agree(coarse), 0, 0.5);
  const asItIs = yield* within(tracing(plan, season, new Set()), 0.5, 0.7);
  const gone = new Set([...settled, ...taken]);
  const thinned =
    regrows(asItIs) && gone.size > 0 ? yield* within(tracing(plan, season, gone), 0.7, 0.9) : asItIs;
  return { asItIs, thinned, taken };
}

/** Whether cuts change how strong the rest grows: only buds answer, shoots in leaf stand as they were measured. */
const regrows = ({ canopy }: TracedCanopy): boolean => canopy.owners.some((owner) => owner?.kind === 'bud');

function* agree(input: RoundsInput): PlanSteps<ReadonlySet<string>> {
  const { plan, season, settled, candidates } = input;
  const part = 1 / (2 * mostRounds + 1);
  let traced = yield* within(tracing(plan, season, settled), 0, part);
  let kept: Uint8Array | null = null;
  let best = {
    value: Number.NEGATIVE_INFINITY,
    kept: new Uint8Array(candidates.length).fill(1) as Uint8Array,
  };
  for (let round = 1; round <= mostRounds; round++) {
    const before: Uint8Array | null = kept;
    kept = yield* within(
      searching(problemOn(input, traced), before),
      (2 * round - 1) * part,
      2 * round * part,
    );
    if (!regrows(traced) || (before !== null && sameSet(before, kept))) return takenOf(candidates, kept);
    const gone = new Set([...settled, ...takenOf(candidates, kept)]);
    traced = yield* within(tracing(plan, season, gone), 2 * round * part, (2 * round + 1) * part);
    const value = valueOf(problemOn(input, traced), kept);
    if (value > best.value) best = { value, kept };
  }
  return takenOf(candidates, best.kept);
}

const problemOn = (input: RoundsInput, traced: TracedCanopy): ThinProblem =>
  thinProblem({ ...input, traced, values: input.plan.values });

const takenOf = (candidates: readonly Candidate[], kept: Uint8Array): ReadonlySet<string> =>
  new Set(candidates.filter((_, i) => kept[i] === 0).map(({ id }) => id));

const sameSet = (a: Uint8Array, b: Uint8Array): boolean => a.every((kept, i) => kept === b[i]);

/** Worth of a set on a problem where all are kept. */
function valueOf(problem: ThinProblem, kept: Uint8Array): number {
  kept.forEach((stands, member) => {
    if (stands === 0) problem.flip(member);
  });
  return problem.value();
}

function* searching(problem: ThinProblem, start: Uint8Array | null): PlanSteps<Uint8Array> {
  const search = start === null ? searchKeepSet(problem) : searchKeepSet(problem, start);
  for (let step = search.next(), moves = 1; ; step = search.next(), moves++) {
    if (step.done) return step.value.kept;
    yield { done: 1 - 1 / (1 + moves / 50), doing: 'Trying which shoots to keep' };
  }
}

function* tracing(
  plan: PlanInput,
  season: SeasonDates,
  notSharing: ReadonlySet<string>,
): PlanSteps<TracedCanopy> {
  const steps = traceCanopy(plan, season, notSharing);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield { done: step.value, doing: 'Following the light' };
  }
}

/** A part of the work, its progress from one share of the whole to another. */
function* within<Result>(steps: PlanSteps<Result>, from: number, to: number): PlanSteps<Result> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield { ...step.value, done: from + (to - from) * step.value.done };
  }
}
