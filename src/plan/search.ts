/**
 * Which of many to keep. Greedy removal from all and greedy addition from the least, each followed by single
 * moves and swaps until none helps; the better of the two. On small cases this has always met the optimum found by
 * trying every set; on large ones it is a good answer, not a proven one.
 */

/** A set that can be changed one member at a time, with its exact worth. */
export interface KeepProblem {
  /** Members 0 to count - 1. */
  readonly count: number;
  /** Worth of the set as it stands; higher is better. */
  value(): number;
  /** Takes a member out, or puts it back. */
  flip(member: number): void;
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
    return { kept: state.kept.slice(), value: state.value };
  }
  yield* climb(state, 1);
  yield* settle(state);
  const fromAbove = { kept: state.kept.slice(), value: state.value };
  state.become(new Uint8Array(problem.count));
  yield* climb(state, 0);
  yield* settle(state);
  if (fromAbove.value >= state.value - least) state.become(fromAbove.kept);
  return { kept: state.kept.slice(), value: state.value };
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

/** Single moves and swaps, each taken as soon as it helps, until a whole round brings nothing. */
function* settle(state: SetState): Generator<void, void, void> {
  for (let improved = true; improved; ) {
    improved = false;
    for (let i = 0; i < state.kept.length; i++) {
      improved = state.bettered(i) || swapped(state, i) || improved;
      yield;
    }
  }
}

/** Flips a member together with one in the other state, when some pair makes the set better. */
function swapped(state: SetState, i: number): boolean {
  state.flip(i);
  for (let j = 0; j < state.kept.length; j++) {
    if (j !== i && state.kept[j] === state.kept[i] && state.bettered(j)) return true;
  }
  state.flip(i);
  return false;
}
