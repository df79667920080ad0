/** Cut, regrow, look again: fewer buds make stronger shoots, so the keep-set and the canopy have to agree. */
import type { CutEnd } from '../growth/cutEnds.ts';
import type { SeasonDates } from '../season/seasonDates.ts';
import type { Candidate } from './candidates.ts';
import { type ChoicePoint, chooseSets, type ThinProblem } from './choice.ts';
import { type JobSteps, within } from './errand.ts';
import type { PlanInput } from './input.ts';
import { type KeepProblem, type Kept, searchKeepSet } from './search.ts';
import { thinProblem } from './thin.ts';
import { grows, type TracedSeason, untracedSeason } from './tracedSeason.ts';
import { traceUpTo } from './traceUpTo.ts';
import { mostToWalk, walkKeepSets } from './walkKeepSets.ts';
import { type Doubt, noDoubt } from './worlds/judgePlan.ts';
import { rivalsOf } from './worlds/rivals.ts';

/** Rounds of search at most; the first of them from scratch, the others from the set before. */
const mostRounds = 3;
/** Waves of rays for the search; the scores are taken with all that were asked for. */
const searchWaves = 2;

export interface Thinned {
  /** The tree left alone, and the tree of the plan with its removed buds grown at the same vigour. */
  readonly asItIs: TracedSeason;
  readonly thinned: TracedSeason;
  /** Ids taken by the search. */
  readonly taken: ReadonlySet<string>;
  /** Of those: what is the grower's call. The canopy of the plan is grown as if it stayed. */
  readonly doubt: Doubt;
  readonly search: SearchRecord;
  /** From few shoots to all, on the canopy of the balanced plan. */
  readonly choice: readonly ChoicePoint[];
}

/** What is known of the search. */
export interface SearchRecord {
  /** Those it was free to take or to keep. */
  readonly candidates: number;
  /** What its set is worth on the canopy that it was sought on, in figs: see `thin.ts`; null where there was nothing to choose from. */
  readonly value: number | null;
  /** No set is worth more there, and by how much this one may fall short; null where not all sets were looked at. */
  readonly bound: number | null;
  readonly gap: number | null;
  /** Sets scored, over all rounds. */
  readonly evaluations: number;
}

const noSearch: SearchRecord = { candidates: 0, value: null, bound: null, gap: null, evaluations: 0 };

export interface RoundsInput {
  readonly plan: PlanInput;
  readonly season: SeasonDates;
  readonly candidates: readonly Candidate[];
  readonly pinned: readonly Candidate[];
  /** Ids of all that goes whatever the search finds. */
  readonly settled: ReadonlySet<string>;
  /** Ends of branches that are to be shortened. */
  readonly ends: readonly CutEnd[];
  /** Looks at what was taken in many worlds; left out where none are asked for. */
  readonly judge?: (chosen: Chosen) => JobSteps<Doubt>;
}

/** The keep-set of the round that is worth most on its own regrown canopy, and the two canopies to compare. */
export function* thinInRounds(input: RoundsInput): JobSteps<Thinned> {
  const { plan, settled, candidates } = input;
  const untouched = grownWithout(input, new Set());
  const start = settled.size > 0 && grows(plan) ? grownWithout(input, settled) : untouched;
  const agreed: Agreed =
    candidates.length === 0
      ? { taken: new Set(), thinned: start, first: start, search: noSearch }
      : yield* within(agree(input, start), 0, 0.45);
  const chosen = yield* within(choosing(input, agreed), 0.45, 0.5);
  const first = start === untouched ? agreed.first : untouched;
  const doubt = input.judge === undefined ? noDoubt : yield* within(input.judge(chosen), 0.5, 0.7);
  const asItIs = yield* within(tracing(plan.waves, first, input), 0.7, 0.8);
  const planned = withoutCalls(input, chosen, doubt.yourCall);
  const isSame = planned.full.canopy === asItIs.full.canopy;
  const thinned = isSame ? asItIs : yield* within(tracing(plan.waves, planned, input), 0.8, 0.9);
  return { asItIs, thinned, taken: chosen.taken, doubt, search: agreed.search, choice: chosen.choice };
}

/** The canopy of the plan, with what is the grower's call counted as staying. */
function withoutCalls(input: RoundsInput, chosen: Chosen, yourCall: ReadonlySet<string>): TracedSeason {
  if (yourCall.size === 0 || !grows(input.plan)) return chosen.thinned;
  const sure = [...chosen.taken].filter((id) => !yourCall.has(id));
  return grownWithout(input, new Set([...input.settled, ...sure]));
}

/** The same without tracing, for other pins or another boldness: sought on from the set before, on its canopies. */
export function* thinAgain(input: RoundsInput, before: Thinned): JobSteps<Thinned> {
  const { candidates } = input;
  if (candidates.length === 0)
    return { ...before, taken: new Set(), doubt: noDoubt, search: noSearch, choice: [] };
  const problem = counted(problemOn(input, before.thinned));
  const start = Uint8Array.from(candidates, ({ id }) => (before.taken.has(id) ? 0 : 1));
  const found: Kept = yield* within(searching(problem, start), 0, 0.5);
  const search = recordOf(candidates.length, found.value, problem.evaluations());
  const agreed = {
    taken: takenOf(candidates, found.kept),
    thinned: before.thinned,
    first: before.asItIs,
    search,
  };
  const { taken, choice } = yield* within(choosing(input, agreed), 0.5, 0.9);
  return { ...before, taken, doubt: { ...before.doubt, confidence: null }, search, choice };
}

const grownWithout = ({ plan, season, ends }: RoundsInput, notSharing: ReadonlySet<string>): TracedSeason =>
  untracedSeason(plan, season, notSharing, ends);

interface Agreed {
  readonly taken: ReadonlySet<string>;
  /** The canopy regrown without what was taken, and the one the search began on, with a few waves each. */
  readonly thinned: TracedSeason;
  readonly first: TracedSeason;
  readonly search: SearchRecord;
}

function* agree(input: RoundsInput, start: TracedSeason): JobSteps<Agreed> {
  const { plan, settled, candidates } = input;
  const part = 1 / (2 * mostRounds + 1);
  const waves = Math.min(plan.waves, searchWaves);
  const first = yield* within(tracing(waves, start, input), 0, part);
  let traced = first;
  let before: Uint8Array | null = null;
  let evaluations = 0;
  let best: { value: number; of: Omit<Agreed, 'first'> } | null = null;
  for (let round = 1; ; round++) {
    const problem = counted(problemOn(input, traced));
    const found: Kept = yield* within(searching(problem, before), (2 * round - 1) * part, 2 * round * part);
    evaluations += problem.evaluations();
    const taken = takenOf(candidates, found.kept);
    const search = recordOf(candidates.length, found.value, evaluations);
    const agrees = before !== null && sameSet(before, found.kept);
    if (agrees || !grows(plan)) return { taken, thinned: traced, first, search };
    const regrown = grownWithout(input, new Set([...settled, ...taken]));
    traced = yield* within(tracing(waves, regrown, input), 2 * round * part, (2 * round + 1) * part);
    const value = valueOf(problemOn(input, traced), found.kept);
    if (best === null || value > best.value) best = { value, of: { taken, thinned: traced, search } };
    if (round === mostRounds) return { ...best.of, first, search: { ...best.of.search, evaluations } };
    before = found.kept;
  }
}

/** What goes as boldly as was asked for. */
export interface Chosen extends Pick<Thinned, 'thinned' | 'taken' | 'choice'> {
  /** Of those: what the best set leaves standing. */
  readonly asked: ReadonlySet<string>;
  /** For what goes: which one might go in its place; empty where no worlds are asked for. */
  readonly rivals: ReadonlyMap<string, string>;
}

/** The set as bold as was asked for, on a canopy regrown for it. */
function* choosing(input: RoundsInput, agreed: Agreed): JobSteps<Chosen> {
  const { plan, settled, candidates } = input;
  const { taken, thinned } = agreed;
  if (candidates.length === 0) return { taken, thinned, choice: [], asked: new Set(), rivals: new Map() };
  const problem = problemOn(input, thinned);
  const best = Uint8Array.from(candidates, ({ id }) => (taken.has(id) ? 0 : 1));
  valueOf(problem, best);
  const sets = chooseSets(problem, best);
  let step = sets.next();
  for (let n = 1; !step.done; step = sets.next(), n++) {
    yield { done: 1 - 1 / (1 + n / 20), doing: 'Looking at fewer and more shoots' };
  }
  const { points: choice, kept } = step.value;
  const wanted = kept[plan.boldness ?? 'balanced'];
  const rivals = input.judge === undefined ? new Map() : rivalIds(problem, candidates, best, wanted);
  if (sameSet(wanted, best)) return { taken, thinned, choice, asked: new Set(), rivals };
  const takenThen = takenOf(candidates, wanted);
  const asked = new Set([...takenThen].filter((id) => !taken.has(id)));
  const regrown = grows(plan) ? grownWithout(input, new Set([...settled, ...takenThen])) : thinned;
  return { taken: takenThen, thinned: regrown, choice, asked, rivals };
}

/** @param now the set at which the problem stands, which is left at `wanted` */
function rivalIds(
  problem: KeepProblem,
  candidates: readonly Candidate[],
  now: Uint8Array,
  wanted: Uint8Array,
): ReadonlyMap<string, string> {
  wanted.forEach((stands, member) => {
    if (stands !== now[member]) problem.flip(member);
  });
  const idOf = (member: number): string => candidates[member]?.id ?? '';
  return new Map([...rivalsOf(problem, wanted)].map(([one, other]) => [idOf(one), idOf(other)]));
}

/** A set found by looking at all is worth as much as any. */
function recordOf(candidates: number, value: number, evaluations: number): SearchRecord {
  const isProved = candidates <= mostToWalk;
  return { candidates, value, bound: isProved ? value : null, gap: isProved ? 0 : null, evaluations };
}

function counted(problem: KeepProblem): KeepProblem & { evaluations(): number } {
  let evaluations = 0;
  const value = (): number => {
    evaluations++;
    return problem.value();
  };
  return { ...problem, value, evaluations: () => evaluations };
}

const problemOn = (input: RoundsInput, traced: TracedSeason): ThinProblem =>
  thinProblem({ ...input, traced, tree: input.plan.tree, values: input.plan.values });

const takenOf = (candidates: readonly Candidate[], kept: ArrayLike<number>): ReadonlySet<string> =>
  new Set(candidates.filter((_, i) => kept[i] === 0).map(({ id }) => id));

const sameSet = (a: Uint8Array, b: Uint8Array): boolean => a.every((kept, i) => kept === b[i]);

/** Worth of a set on a problem where all are kept. */
function valueOf(problem: KeepProblem, kept: Uint8Array): number {
  kept.forEach((stands, member) => {
    if (stands === 0) problem.flip(member);
  });
  return problem.value();
}

/** Few candidates: all sets; many: a search, in later rounds from the set before. */
function* searching(problem: KeepProblem, start: Uint8Array | null): JobSteps<Kept> {
  const search =
    problem.count <= mostToWalk ? walkKeepSets(problem) : searchKeepSet(problem, start ?? undefined);
  for (let step = search.next(), moves = 1; ; step = search.next(), moves++) {
    if (step.done) return step.value;
    yield { done: 1 - 1 / (1 + moves / 50), doing: 'Trying which shoots to keep' };
  }
}

const tracing = (waves: number, grown: TracedSeason, { plan }: RoundsInput): JobSteps<TracedSeason> =>
  traceUpTo(waves, grown, plan);
