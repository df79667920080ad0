/** The best of all sets of a few members, by looking at each of them. */
import type { KeepProblem, Kept } from './search.ts';

/** Members of which all sets are looked at: 16,384 of 14, a few tenths of a second; our choice. */
export const mostToWalk = 14;

/** Sets looked at between two steps of progress. */
const setsAStep = 256;

/**
 * Goes through all sets, flipping one member from each to the next (Gray 1953, US patent 2632058), and leaves the problem at
 * the best: of equals the one met first. All members are kept when it begins.
 */
export function* walkKeepSets(problem: KeepProblem): Generator<void, Kept, void> {
  const { count } = problem;
  const now = new Uint8Array(count).fill(1);
  let best: Kept = { kept: now.slice(), value: problem.value() };
  for (let n = 1; n < 2 ** count; n++) {
    const member = 31 - Math.clz32(n & -n);
    problem.flip(member);
    now[member] = 1 - (now[member] as number);
    const value = problem.value();
    if (value > best.value + 1e-9) best = { kept: now.slice(), value };
    if (n % setsAStep === 0) yield;
  }
  best.kept.forEach((stands, member) => {
    if (stands !== now[member]) problem.flip(member);
  });
  return best;
}
