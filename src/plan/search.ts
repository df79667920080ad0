/**
 * Which of many to keep. Greedy removal from all and greedy addition from the least, each followed by single
 * moves and swaps until none helps; then from the better of the two a few kicks (Lourenco, Martin and Stutzle 2003, Iterated
 * local search): some members flipped by chance, settled again, kept when better. Met the best of all sets in all
 * of 60 random crowded trees of 9 to 12 buds; on large trees it is a good answer, not a proven one.
 */
import { random01 } from '../geometry/random.ts';

/** A set that can be changed one member at a time, with its exact worth. */
export interface KeepProblem {
  /** Members 0 to count - 1. */
  readonly count: number;
  /** Worth of the set as it stands; higher is better. */
  value(): number;
  /**
   * Worth were one member taken out, or put back; the set stays as it is. Where that is surely below `atLeast`, any worth
   * below it will do.
   */
  valueIf(member: number, atLeast: number): number;
  /** Takes a member out, or puts it back. */
  flip(member: number): void;
  /** Members worth trying in exchange for this one; all when left out. */
  partnersOf?(member: number): readonly number[];
}

/** The same problem, with every set scored counted. */
export function counted<Problem extends KeepProblem>(problem: Problem): Problem & { evaluations(): number } {
  let evaluations = 0;
  return {
    ...problem,
    value: () => {
      evaluations++;
      return problem.value();
    },
    valueIf: (member, atLeast) => {
      evaluations++;
      return problem.valueIf(member, atLeast);
    },
    evaluations: () => evaluations,
  };
}

export interface Kept {
  /** Entry per member: 1 kept, 0 gone. */
  readonly kept: Uint8Array;
  readonly value: number;
}

/** Gains below this are rounding, not gains. */
const least = 1e-9;

export interface SearchStart {
  /** A set known to be good, entry per member: the search then only betters that one. */
  readonly from?: ArrayLike<number> | undefined;
  /** Share of the kicks, 0 to 1; all when left out. Without any, swaps are tried with partners alone. */
  readonly effort?: number;
}

/** Leaves the problem at its best set. All members are kept when it begins. Yields after each round of moves. */
export function* searchKeepSet(
  problem: KeepProblem,
  { from, effort = 1 }: SearchStart = {},
): Generator<void, Kept, void> {
  const state = new SetState(problem);
  if (from === undefined) yield* construct(state);
  else {
    state.become(from);
    yield* settle(state);
  }
  const kicks = Math.ceil(effort * kicksFor(problem.count));
  for (let kick = 0; kick < kicks; kick++) yield* kicked(state, kick);
  if (effort > 0) yield* settleAmongAll(state);
  return { kept: state.kept.slice(), value: state.value };
}

/** The better of what is left of all and of what is built up from none. */
function* construct(state: SetState): Generator<void, void, void> {
  yield* climb(state, 1);
  yield* settle(state);
  const fromAbove = { kept: state.kept.slice(), value: state.value };
  state.become(new Uint8Array(state.problem.count));
  yield* climb(state, 0);
  yield* settle(state);
  if (fromAbove.value >= state.value - least) state.become(fromAbove.kept);
}

/** Kicks get dear with the square of the members: 24 for up to sixty, 7 for two hundred. Our choice, by trees of 60 buds. */
const kicksFor = (count: number): number =>
  count < 4 ? 0 : Math.max(3, Math.min(24, Math.round(1440 / count)));

/**
 * Flips two kept and two gone members by chance, every second time on one limb, settles, and goes back unless that was
 * better.
 */
function* kicked(state: SetState, kick: number): Generator<void, void, void> {
  const [kept, value] = [state.kept.slice(), state.value];
  const drawn = (members: readonly number[], k: number): number | undefined =>
    members[Math.floor(random01(kick, k, members.length) * members.length)];
  const all = [...kept.keys()];
  const { partnersOf } = state.problem;
  const near = kick % 2 === 1 && partnersOf !== undefined ? partnersOf(drawn(all, 4) ?? 0) : all;
  for (let k = 0; k < 4; k++) {
    const member = drawn(
      near.filter((i) => kept[i] === k % 2 && state.kept[i] === kept[i]),
      k,
    );
    if (member !== undefined) state.flip(member);
  }
  state.value = state.problem.value();
  yield* settle(state);
  if (state.value <= value + least) state.become(kept);
}

class SetState {
  readonly kept: Uint8Array;
  value: number;
  readonly problem: KeepProblem;

  constructor(problem: KeepProblem) {
    this.problem = problem;
    this.kept = new Uint8Array(problem.count).fill(1);
    this.value = problem.value();
  }

  flip(member: number): void {
    this.problem.flip(member);
    this.kept[member] = 1 - (this.kept[member] as number);
  }

  become(kept: ArrayLike<number>): void {
    for (let i = 0; i < this.kept.length; i++) if (this.kept[i] !== kept[i]) this.flip(i);
    this.value = this.problem.value();
  }

  /** Flips a member for good when that makes the set better. */
  bettered(member: number): boolean {
    const value = this.problem.valueIf(member, this.value + least);
    if (!(value > this.value + least)) return false;
    this.flip(member);
    this.value = this.problem.value();
    return true;
  }
}

/** Flips the member in state `from` (1 kept, 0 gone) that brings most, again and again while one helps. */
function* climb(state: SetState, from: number): Generator<void, void, void> {
  if (from === 0 && state.kept.length > mostForAllPairs) {
    yield* climbLazily(state, from);
    return;
  }
  for (;;) {
    let [best, bestValue] = [-1, state.value + least];
    for (let i = 0; i < state.kept.length; i++) {
      if (state.kept[i] !== from) continue;
      const value = state.problem.valueIf(i, bestValue);
      if (value > bestValue) [best, bestValue] = [i, value];
    }
    if (best < 0) return;
    state.bettered(best);
    yield;
  }
}

/**
 * The same for many members: what a member brought when it was last looked at bounds what it brings now, so only those at the top
 * are looked at again (Minoux 1978, accelerated greedy). Where one brings more than before it may be met late, never left out.
 */
function* climbLazily(state: SetState, from: number): Generator<void, void, void> {
  const gain = new Float64Array(state.kept.length).fill(Number.POSITIVE_INFINITY);
  const lookedAt = new Int32Array(gain.length).fill(-1);
  for (let step = 0; ; step++) {
    for (;;) {
      const best = topOf(state, from, gain);
      if (best < 0) return;
      if (lookedAt[best] === step) {
        if (!((gain[best] as number) > least)) return;
        state.bettered(best);
        break;
      }
      gain[best] = state.problem.valueIf(best, Number.NEGATIVE_INFINITY) - state.value;
      lookedAt[best] = step;
    }
    yield;
  }
}

/** The member in that state with the greatest gain; -1 without one. */
function topOf({ kept }: SetState, from: number, gain: Float64Array): number {
  let best = -1;
  for (let i = 0; i < kept.length; i++) {
    if (kept[i] === from && (best < 0 || (gain[i] as number) > (gain[best] as number))) best = i;
  }
  return best;
}

type Partners = (member: number) => Iterable<number>;

/** Single moves and swaps, each taken as soon as it helps, until a whole round brings nothing. */
function* settle(
  state: SetState,
  partners: Partners = (i) => state.problem.partnersOf?.(i) ?? state.kept.keys(),
): Generator<void, void, void> {
  for (let improved = true; improved; ) {
    improved = false;
    for (let i = 0; i < state.kept.length; i++) {
      // Each pair once: a kept member for one that is gone.
      improved = state.bettered(i) || (state.kept[i] === 1 && swapped(state, i, partners)) || improved;
      yield;
    }
  }
}

/** More members have too many pairs; our choice. */
const mostForAllPairs = 100;

/** At the end swaps with any other member, not only with the partners. */
function* settleAmongAll(state: SetState): Generator<void, void, void> {
  if (state.problem.partnersOf === undefined || state.problem.count > mostForAllPairs) return;
  yield* settle(state, () => state.kept.keys());
}

/** Flips a member together with one in the other state, when some pair makes the set better. */
function swapped(state: SetState, i: number, partners: Partners): boolean {
  state.flip(i);
  for (const j of partners(i)) {
    if (j !== i && state.kept[j] === state.kept[i] && state.bettered(j)) return true;
  }
  state.flip(i);
  return false;
}
