/**
 * How much any set may be better than one that is known: branch and bound over groups (Land and Doig 1960), within a budget. Sets that
 * cannot be worth what is looked for leave their group for good, and what the rest agree on is settled before the next bound.
 */
import { Bounds, type Domains, type PartedProblem } from './bound.ts';
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
  let bound = Math.max(known.value, bounds.bound(bounds.tables(bounds.whole())));
  for (const share of budget > 0 ? passes : []) {
    search.share = share;
    if (beyond(search) >= bound) continue;
    const parts = descend(search, bounds.whole());
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

/** Sets are taken out anew while that leaves this share of them, or less; our choice. */
const againBelow = 0.9;

/** Looks at all that may be better in these domains; false where the budget was spent before. */
function* descend(search: Looking, domains: Domains): Generator<void, boolean, void> {
  const { bounds, budget } = search;
  let open = domains;
  for (let before = Number.POSITIVE_INFINITY; setsIn(open) <= againBelow * before; ) {
    if (bounds.evaluations > budget) return false;
    yield;
    before = setsIn(open);
    bounds.settle(open);
    const tables = bounds.tables(open);
    if (tables.length === 0) {
      const value = bounds.value();
      if (value > search.best.value + least) search.best = { kept: bounds.kept(), value };
      return true;
    }
    open = bounds.narrowed(beyond(search), tables, open);
    if (open.some((sets) => sets.length === 0)) return true;
  }
  const group = nextOf(open);
  for (const set of open[group] ?? []) {
    const part = open.map((sets, g) => (g === group ? [set] : sets));
    if (!(yield* descend(search, part))) return false;
  }
  return true;
}

const setsIn = (domains: Domains): number => domains.reduce((sum, sets) => sum + sets.length, 0);

/** The group to be decided next: that with the fewest sets, of those that are not decided. */
function nextOf(domains: Domains): number {
  const open = [...domains.keys()].filter((g) => (domains[g]?.length ?? 0) > 1);
  return open.reduce((a, b) => ((domains[b]?.length ?? 0) < (domains[a]?.length ?? 0) ? b : a), open[0] ?? 0);
}
