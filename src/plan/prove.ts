/** How much any set may be better than one that is known: branch and bound over groups (Land and Doig 1960), within a budget. */
import { Bounds, type PartedProblem } from './bound.ts';
import type { Kept } from './search.ts';

/** What is proved, as far as the budget went. */
export interface Proof extends Kept {
  /** No set is worth more. */
  readonly bound: number;
  /** Sets scored. */
  readonly evaluations: number;
}

/** Shares by which a set must beat the known one to be looked for, one pass after the other; our choice. */
const passes = [0.2, 0.1, 0.05, 0.02, 0.01, 0.004, 0];
/** Worth that is rounding. */
const least = 1e-9;

/**
 * Tightens the bound on a known set, pass by pass: a pass that ends within the budget proves that no set is better by more than its
 * share. A better set that is met takes the place of the known one. Yields the bound after each part that is looked at.
 * @param budget sets scored, at most
 * @param groupSize members of a group
 */
export function* prove(
  problem: PartedProblem,
  known: Kept,
  budget: number,
  groupSize: number,
): Generator<number, Proof, void> {
  const bounds = new Bounds(problem, groupSize);
  const search: Looking = { bounds, budget, best: known, share: 0 };
  let bound = Math.max(known.value, bounds.bound(bounds.tables(0)));
  for (const share of budget > 0 ? passes : []) {
    search.share = share;
    if (beyond(search) >= bound) continue;
    const parts = descend(search, 0);
    let step = parts.next();
    for (; !step.done; step = parts.next()) yield bound;
    if (!step.value) break;
    bound = Math.max(search.best.value, beyond(search));
  }
  const { kept, value } = search.best;
  problem.become(kept);
  return { kept, value, bound: Math.max(bound, value), evaluations: bounds.evaluations };
}

interface Looking {
  readonly bounds: Bounds;
  readonly budget: number;
  best: Kept;
  share: number;
}

/** Worth above which a set is looked for. */
const beyond = ({ best, share }: Looking): number => best.value + share * Math.abs(best.value) + least;

/** Looks at all that may be better beside what is decided; false where the budget was spent before. */
function* descend(search: Looking, from: number): Generator<void, boolean, void> {
  const { bounds, budget } = search;
  if (bounds.evaluations > budget) return false;
  yield;
  const group = bounds.groups[from];
  if (group === undefined) {
    const value = bounds.value();
    if (value > search.best.value + least) search.best = { kept: bounds.kept(), value };
    return true;
  }
  const tables = bounds.tables(from);
  const open = bounds.open(beyond(search), tables);
  for (let set = 0; set < open.length; set++) {
    if (open[set] === 0) continue;
    bounds.decide(group, set);
    const isWhole = yield* descend(search, from + 1);
    if (!isWhole) {
      bounds.decide(group, null);
      return false;
    }
  }
  bounds.decide(group, null);
  return true;
}
