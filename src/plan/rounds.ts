/** Cut, regrow, look again: fewer buds make stronger shoots, so the keep-set and the canopy have to agree. */
import type { CutEnd } from '../growth/cutEnds.ts';
import type { SeasonDates } from '../season/seasonDates.ts';
import type { Candidate } from './candidates.ts';
import { type ChoicePoint, chooseSets } from './choice.ts';
import { type JobSteps, within } from './errand.ts';
import type { PlanInput } from './input.ts';
import { type Offered, offeredFor, offeredFrom } from './offered.ts';
import { type Proof, prove } from './prove.ts';
import { counted, type KeepProblem, type Kept, type SearchStart, searchKeepSet } from './search.ts';
import { noSearch, recordOf, type SearchRecord } from './searchRecord.ts';
import { type SoughtLight, type ThinProblem, thinProblem } from './thin.ts';
import { grows, type TracedSeason, untracedSeason } from './tracedSeason.ts';
import { traceUpTo } from './traceUpTo.ts';
import { mostToWalk, walkKeepSets } from './walkKeepSets.ts';
import { type Doubt, noDoubt } from './worlds/judgePlan.ts';
import { rivalsOf } from './worlds/rivals.ts';

/** Rounds of search at most; the first of them from scratch, the others from the set before. Our choice. */
const mostRounds = 4;
/** Members of a group of the bound, alone and where it is tightened, and sets scored for that; our choice. */
const groupSize = 6;
const smallGroupSize = 4;
/** With more members a bound is far off whatever the groups. */
const mostForLargeGroups = 100;
const mostToProve = 1_500_000;
/** Kicks while set and canopy do not agree yet, as share of those in the end. Our choice. */
const roundEffort = 0.15;
/** Waves of rays for the search; the scores are taken with all that were asked for. */
const searchWaves = 4;

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
  /** What each boldness takes, so that one asked for later takes just that; null where nothing was to choose. */
  readonly offered: Offered | null;
  /** Light of the canopy on which they were sought, for other pins; null where nothing was to choose. */
  readonly sought: SoughtLight | null;
}

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
  /** Tells what was found before that, on the rays of the search; left out where the end alone is wanted. */
  readonly tellFirst?: (found: Thinned) => JobSteps<void>;
}

/** The keep-set of the round that is worth most on its own regrown canopy, and the two canopies to compare. */
export function* thinInRounds(input: RoundsInput): JobSteps<Thinned> {
  const { plan, settled, candidates } = input;
  const untouched = grownWithout(input, new Set());
  const start = settled.size > 0 && grows(plan) ? grownWithout(input, settled) : untouched;
  const agreed: Agreed =
    candidates.length === 0
      ? { taken: new Set(), thinned: start, first: start, search: noSearch, problem: null }
      : yield* within(agree(input, start), 0, 0.45);
  const chosen = yield* within(choosing(input, agreed), 0.45, 0.5);
  const sought = agreed.problem?.light() ?? null;
  const { taken, choice, offered } = chosen;
  const known = { taken, search: agreed.search, choice, offered, sought };
  let first = start === untouched ? agreed.first : untouched;
  if (input.judge !== undefined && input.tellFirst !== undefined) {
    const waves = Math.min(plan.waves, searchWaves);
    first = yield* within(tracing(waves, first, input), 0.5, 0.5);
    const thinned = yield* within(tracing(waves, chosen.thinned, input), 0.5, 0.5);
    yield* within(input.tellFirst({ ...known, asItIs: first, thinned, doubt: noDoubt }), 0.5, 0.5);
  }
  const doubt = input.judge === undefined ? noDoubt : yield* within(input.judge(chosen), 0.5, 0.7);
  const asItIs = yield* within(tracing(plan.waves, first, input), 0.7, 0.8);
  const planned = withoutCalls(input, chosen, doubt.yourCall);
  const isSame = planned.full.canopy === asItIs.full.canopy;
  const thinned = isSame ? asItIs : yield* within(tracing(plan.waves, planned, input), 0.8, 0.9);
  return { ...known, asItIs, thinned, doubt };
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
    return { ...before, taken: new Set(), doubt: noDoubt, search: noSearch, choice: [], offered: null };
  const boldness = input.plan.boldness ?? 'balanced';
  const known = offeredFor(candidates, input.settled, before.offered);
  if (known !== null) {
    return { ...before, taken: known.taken[boldness], doubt: { ...before.doubt, confidence: null } };
  }
  const traced = before.sought?.traced ?? before.thinned;
  const problem = counted(problemOn(input, traced, before.sought));
  const from = Uint8Array.from(candidates, ({ id }) => (before.taken.has(id) ? 0 : 1));
  const found: Kept = yield* within(searching(problem, { from, effort: 0 }), 0, 0.5);
  const searched = { evaluations: problem.evaluations(), rounds: 1, agreed: true };
  const search = recordOf(problem, found, null, searched);
  const agreed = { ...before, taken: takenOf(candidates, found.kept), search, first: before.asItIs, problem };
  const again = { ...before, doubt: { ...before.doubt, confidence: null }, search };
  if (boldness === 'balanced') return { ...again, taken: agreed.taken };
  const { taken, choice, offered } = yield* within(choosing(input, agreed), 0.5, 0.9);
  return { ...again, taken, choice, offered };
}

const grownWithout = ({ plan, season, ends }: RoundsInput, notSharing: ReadonlySet<string>): TracedSeason =>
  untracedSeason(plan, season, notSharing, ends);

interface Agreed {
  readonly taken: ReadonlySet<string>;
  /** The canopy regrown without what was taken, and the one the search began on, with a few waves each. */
  readonly thinned: TracedSeason;
  readonly first: TracedSeason;
  readonly search: SearchRecord;
  /** Of that canopy, standing at that set; null where nothing is to choose. */
  readonly problem: ThinProblem | null;
}

function* agree(input: RoundsInput, start: TracedSeason): JobSteps<Agreed> {
  const { plan, settled, candidates } = input;
  const part = 1 / (2 * mostRounds + 1);
  const waves = Math.min(plan.waves, searchWaves);
  const first = yield* within(tracing(waves, start, input), 0, part);
  let thinned = first;
  let problem = counted(problemOn(input, thinned));
  let grownFor: Uint8Array = new Uint8Array(candidates.length).fill(1);
  let evaluations = 0;
  let best: (Kept & { readonly of: Pick<Agreed, 'taken' | 'thinned'> & { problem: ThinProblem } }) | null =
    null;
  for (let round = 1; ; round++) {
    const isLast = !grows(plan);
    const from = round === 1 ? undefined : grownFor;
    const start = { from, effort: isLast ? 1 : roundEffort };
    let found: Kept = yield* within(searching(problem, start), (2 * round - 1) * part, 2 * round * part);
    if (!isLast && sameSet(grownFor, found.kept)) {
      found = yield* within(searching(problem, { from: grownFor }), 2 * round * part, 2 * round * part);
    }
    evaluations += problem.evaluations();
    let agreed = isLast || sameSet(grownFor, found.kept);
    if (agreed) {
      const proof = yield* within(proving(problem, found, plan.prove), 2 * round * part, 1);
      evaluations += proof.evaluations;
      agreed = isLast || sameSet(found.kept, proof.kept);
      found = proof;
      if (agreed) {
        const search = recordOf(problem, found, proof.bound, { evaluations, rounds: round, agreed });
        return { taken: takenOf(candidates, found.kept), thinned, first, search, problem };
      }
    }
    const taken = takenOf(candidates, found.kept);
    const regrown = grownWithout(input, new Set([...settled, ...taken]));
    thinned = yield* within(tracing(waves, regrown, input), 2 * round * part, (2 * round + 1) * part);
    problem = counted(problemOn(input, thinned));
    const value = valueOf(problem, found.kept);
    if (best === null || value > best.value) {
      best = { value, kept: found.kept, of: { taken, thinned, problem } };
    }
    if (round === mostRounds) {
      const { bound } = yield* within(proving(best.of.problem, best, false), 1, 1);
      const search = recordOf(best.of.problem, best, bound, { evaluations, rounds: round, agreed });
      return { ...best.of, first, search };
    }
    grownFor = found.kept;
  }
}

/** What goes as boldly as was asked for. */
export interface Chosen extends Pick<Thinned, 'thinned' | 'taken' | 'choice' | 'offered'> {
  /** Of those: what the best set leaves standing. */
  readonly asked: ReadonlySet<string>;
  /** For what goes: which one might go in its place; empty where no worlds are asked for. */
  readonly rivals: ReadonlyMap<string, string>;
}

/** The set as bold as was asked for, on a canopy regrown for it. */
function* choosing(input: RoundsInput, agreed: Agreed): JobSteps<Chosen> {
  const { plan, settled, candidates } = input;
  const { taken, thinned, problem } = agreed;
  if (problem === null)
    return { taken, thinned, choice: [], offered: null, asked: new Set(), rivals: new Map() };
  const best = Uint8Array.from(candidates, ({ id }) => (taken.has(id) ? 0 : 1));
  problem.become(best);
  const sets = chooseSets(problem, best);
  let step = sets.next();
  for (let n = 1; !step.done; step = sets.next(), n++) {
    yield { done: 1 - 1 / (1 + n / 20), doing: 'Looking at fewer and more shoots' };
  }
  const { points: choice, kept } = step.value;
  const offered = offeredFrom(candidates, settled, kept);
  const wanted = kept[plan.boldness ?? 'balanced'];
  const rivals = input.judge === undefined ? new Map() : rivalIds(problem, candidates, best, wanted);
  if (sameSet(wanted, best)) return { taken, thinned, choice, offered, asked: new Set(), rivals };
  const takenThen = takenOf(candidates, wanted);
  const asked = new Set([...takenThen].filter((id) => !taken.has(id)));
  const regrown = grows(plan) ? grownWithout(input, new Set([...settled, ...takenThen])) : thinned;
  return { taken: takenThen, thinned: regrown, choice, offered, asked, rivals };
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

/** A set found by looking at all is worth as much as any; of more members a bound tells how far it may fall short. */
function* proving(problem: ThinProblem, found: Kept, isWanted: boolean | undefined): JobSteps<Proof> {
  if (problem.count <= mostToWalk) return { ...found, bound: found.value, evaluations: 0 };
  const budget = isWanted === true ? mostToProve : 0;
  const isSmall = isWanted === true || problem.count > mostForLargeGroups;
  const steps = prove(problem, found, budget, isSmall ? smallGroupSize : groupSize);
  for (let step = steps.next(), part = 1; ; step = steps.next(), part++) {
    if (step.done) return step.value;
    const percent = (100 * (1 - found.value / step.value)).toFixed(1);
    const doing = `Looking for a better choice: none can be better by more than ${percent} %`;
    yield { done: 1 - 1 / (1 + part / 1000), doing };
  }
}

const problemOn = (
  input: RoundsInput,
  traced: TracedSeason,
  sought: SoughtLight | null = null,
): ThinProblem => thinProblem({ ...input, traced, tree: input.plan.tree, values: input.plan.values, sought });

const takenOf = (candidates: readonly Candidate[], kept: ArrayLike<number>): ReadonlySet<string> =>
  new Set(candidates.filter((_, i) => kept[i] === 0).map(({ id }) => id));

const sameSet = (a: Uint8Array, b: Uint8Array): boolean => a.every((kept, i) => kept === b[i]);

function valueOf(problem: ThinProblem, kept: Uint8Array): number {
  problem.become(kept);
  return problem.value();
}

/** Few candidates: all sets; many: a search, in later rounds from the set before. */
function* searching(problem: ThinProblem, start: SearchStart): JobSteps<Kept> {
  problem.become(new Uint8Array(problem.count).fill(1));
  const search = problem.count <= mostToWalk ? walkKeepSets(problem) : searchKeepSet(problem, start);
  for (let step = search.next(), moves = 1; ; step = search.next(), moves++) {
    if (step.done) return step.value;
    yield { done: 1 - 1 / (1 + moves / 50), doing: 'Trying which shoots to keep' };
  }
}

const tracing = (waves: number, grown: TracedSeason, { plan }: RoundsInput): JobSteps<TracedSeason> =>
  traceUpTo(waves, grown, plan);
