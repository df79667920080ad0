/** A wave boiled down to what the light of shoots is asked of: worked out once, whatever period is asked for. */
import type { Canopy } from '../growth/canopy.ts';
import { leafHits } from '../light/leafExposure.ts';
import { regrouped } from '../light/leafLedger.ts';
import { leafPartsTable } from '../light/leafParts.ts';
import { type PartsTable, partsTable } from '../light/lightParts.ts';
import { type Grouping, type NodeTable, nodeTable } from '../light/nodeTable.ts';
import type { UntracedTree } from './untracedTree.ts';
import type { TracedPair } from './wavePair.ts';

/** Groups: the shoots. */
export interface WaveTables {
  readonly nodes: NodeTable['waves'][number];
  readonly parts: PartsTable['waves'][number];
  readonly leafParts: PartsTable['waves'][number];
  /** Rays of both waves. */
  readonly rays: number;
}

/** Group s: the nodes of shoot s, each alike. */
export function nodesOfShoots({ shoots, nodes }: Canopy): Grouping {
  const shootOf = new Map(shoots.map(({ owner }, s) => [owner, s]));
  const indexOf = ({ owner }: { owner: number }): number => {
    const s = shootOf.get(owner);
    if (s === undefined) throw new Error(`nodesOfShoots: owner ${owner} has leaves but is no shoot`);
    return s;
  };
  return { count: shoots.length, group: Int32Array.from(nodes, indexOf) };
}

const only = <T>([one]: readonly T[]): T => one as T;

/** Hands over between the parts of the work. */
export function* waveTables(
  { nodes, leaves }: TracedPair,
  { canopy, input, scene }: Pick<UntracedTree, 'canopy' | 'input' | 'scene'>,
): Generator<void, WaveTables, unknown> {
  const [{ ownerCount }, { values, seed }] = [scene, input];
  const grouping = nodesOfShoots(canopy);
  const ledger = { ownerCount, receiverCount: canopy.nodes.length, waves: [nodes], seed };
  const leafLedger = { ownerCount, groupCount: canopy.leaves.length, waves: [leaves], seed };
  const ofShoots = regrouped(leafLedger, grouping.group, grouping.count);
  const ofNodes = only(nodeTable(ledger, grouping).waves);
  yield;
  const parts = only(partsTable(ledger, values, grouping).waves);
  yield;
  const leafParts = only(leafPartsTable(ofShoots, values).waves);
  const rays = nodes.directions.length * nodes.receiverCount + leafHits(leaves);
  return { nodes: ofNodes, parts, leafParts, rays };
}
