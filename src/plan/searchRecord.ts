/** What is known of the search for what to keep. */
import { type Breaches, costOfBreaches } from './limits.ts';
import type { Kept } from './search.ts';
import type { ThinProblem } from './thin.ts';

export interface SearchRecord {
  /** Those it was free to take or to keep. */
  readonly candidates: number;
  /**
   * What its set is worth on the canopy that it was sought on, in figs: see `thin.ts`; without what broken limits cost it in the search.
   * Null where there was nothing to choose from.
   */
  readonly value: number | null;
  /**
   * No set that breaks no more limits is worth more there, and by what share this one may fall short. 0 where all sets were looked at; else the bound may be
   * far off, and the set the best all the same. Null where there was nothing to choose from, and for other pins at once.
   */
  readonly bound: number | null;
  readonly gap: number | null;
  /** Limits that the set breaks; null where there was nothing to choose from. */
  readonly broken: Breaches | null;
  /** Sets scored, over all rounds. */
  readonly evaluations: number;
  /** Times that growth was sought, each on the canopy regrown for the set before; at most four. */
  readonly rounds: number;
  /** Whether the set found last is the one that its canopy was grown for; else the set that is worth most on its own canopy was taken. */
  readonly agreed: boolean;
}

export const noSearch: SearchRecord = {
  candidates: 0,
  value: null,
  bound: null,
  gap: null,
  broken: null,
  evaluations: 0,
  rounds: 0,
  agreed: true,
};

type Searched = Pick<SearchRecord, 'evaluations' | 'rounds' | 'agreed'>;

/** @param problem is left at that set */
export function recordOf(
  problem: ThinProblem,
  { kept, value: withPenalty }: Kept,
  most: number | null,
  searched: Searched,
): SearchRecord {
  problem.become(kept);
  const broken = problem.breaches();
  const penalty = costOfBreaches(broken);
  const [value, bound] = [withPenalty + penalty, most === null ? null : most + penalty];
  const gap = bound !== null && bound > 0 ? Math.max(0, 1 - value / bound) : null;
  return { candidates: kept.length, value, bound, gap, broken, ...searched };
}
