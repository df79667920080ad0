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
  /** Takes a member out, or puts it back. */
  flip(member: number): void;
  /** Members worth trying in exchange for this one; all when left out. */
  partnersOf?(member: number): readonly number[];
}

export interface Kept {
  /** Entry per member: 1 kept, 0 gone. */
  readonly kept: Uint8Array;
  readonly value: number;
}

/** Gains below this are rounding, not gains. */
const least = 1e-9;

/**
 * Leaves the problem at its best set. All members are kept when it begins. Yields after each round of moves.
 * @param start a set known to be good, entry per member; the search then only betters that one
 */
export function* searchKeepSet(problem: KeepProblem, start?: ArrayLike<number>): Generator<void, Kept, void> {
  const state = new SetState(problem);
  if (start !== undefined) {
    state.become(start);
    yield* settle(state);
    yield* settleAmongAll(state);
    return { kept: state.kept.slice(), value: state.value };
  }
  yield* climb(state, 1);
  yield* settle(state);
  const fromAbove = { kept: state.kept.slice(), value: state.value };
  state.become(new Uint8Array(problem.count));
  yield* climb(state, 0);
  yield* settle(state);
  if (fromAbove.value >= state.value - least) state.become(fromAbove.kept);
  for (let kick = 0; kick < kicksFor(problem.count); kick++) yield* kicked(state, kick);
  yield* settleAmongAll(state);
  return { kept: state.kept.slice(), value: state.value };
}

/** Kicks get dear with the square of the members: 20 for a dozen, 4 for sixty. Our choice, tuned on crowded trees. */
const kicksFor = (count: number): number =>
  count < 4 ? 0 : Math.max(3, Math.min(20, Math.round(240 / count)));

/** Flips two kept and two gone members by chance, settles, and goes back unless that was better. */
function* kicked(state: SetState, kick: number): Generator<void, void, void> {
  const [kept, value] = [state.kept.slice(), state.value];
  for (let k = 0; k < 4; k++) {
    const members = [...state.kept.keys()].filter((i) => kept[i] === k % 2 && state.kept[i] === kept[i]);
    const member = members[Math.floor(random01(kick, k, members.length) * members.length)];
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
    this.flip(member);
    const value = this.problem.value();
    if (value > this.value + least) {
      this.value = value;
      return true;
    }
    this.flip(member);
    return false;
  }
}

/** Flips the member in state `from` (1 kept, 0 gone) that brings most, again and again while one helps. */
function* climb(state: SetState, from: number): Generator<void, void, void> {
  for (;;) {
    let [best, bestValue] = [-1, state.value + least];
    for (let i = 0; i < state.kept.length; i++) {
      if (state.kept[i] !== from) continue;
      state.flip(i);
      const value = state.problem.value();
      state.flip(i);
      if (value > bestValue) [best, bestValue] = [i, value];
    }
    if (best < 0) return;
    state.bettered(best);
    yield;
  }
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
      improved = state.bettered(i) || swapped(state, i, partners) || improved;
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
