import type { LeafLedger } from '../light/leafLedger.ts';
import type { Ledger } from '../light/ledger.ts';
import type { UntracedTree } from './untracedTree.ts';
import type { WaveTables } from './waveTables.ts';

/** What is kept of a traced tree, so that another period costs no ray. */
export interface TracedTree extends UntracedTree {
  /** Receivers: the nodes. */
  readonly ledger: Ledger;
  /** Groups: the leaves. */
  readonly leafLedger: LeafLedger;
  /** Of each wave of the two. */
  readonly tables: readonly WaveTables[];
}
