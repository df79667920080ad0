import type { Canopy } from '../growth/canopy.ts';
import type { LeafLedger } from '../light/leafLedger.ts';
import type { Ledger } from '../light/ledger.ts';
import type { PlanInput } from '../plan/input.ts';
import type { SeasonDates } from '../season/seasonDates.ts';

/** What is kept of a traced tree, so that another period costs no ray. */
export interface TracedTree {
  /** Everything the rays depend on. */
  readonly key: string;
  readonly input: PlanInput;
  readonly season: SeasonDates;
  readonly canopy: Canopy;
  /** Receivers: the nodes. */
  readonly ledger: Ledger;
  /** Groups: the leaves. */
  readonly leafLedger: LeafLedger;
}
