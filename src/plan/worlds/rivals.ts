/** For each bud or shoot that goes: which one might go in its place. */
import type { KeepProblem } from '../search.ts';

/**
 * The best exchange of each taken member for a kept one that the search would try with it; chosen on the plan's own light, before
 * any world is looked at, so that no world can choose it. Leaves the problem as it stands.
 * @param kept the set at which the problem stands, entry per member
 */
export function rivalsOf(problem: KeepProblem, kept: ArrayLike<number>): ReadonlyMap<number, number> {
  const rivals = new Map<number, number>();
  for (let member = 0; member < problem.count; member++) {
    if (kept[member] === 1) continue;
    problem.flip(member);
    let [best, bestValue] = [-1, Number.NEGATIVE_INFINITY];
    for (const other of problem.partnersOf?.(member) ?? Array.from(kept, (_, i) => i)) {
      if (kept[other] !== 1) continue;
      const value = problem.valueIf(other, bestValue);
      if (value > bestValue) [best, bestValue] = [other, value];
    }
    problem.flip(member);
    if (best >= 0) rivals.set(member, best);
  }
  return rivals;
}
