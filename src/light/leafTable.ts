/** The light on groups of leaves, direction by direction: asked of any light it answers without looking at a hit. */
import type { LeafLedger, LeafWave } from './leafLedger.ts';
import type { KeepSet } from './ledger.ts';
import type { RowOf, TableWave } from './nodeTable.ts';

/**
 * One matrix a wave, for one set of kept owners. Entry d * groupCount + g of `passed`: light on both faces of the leaves of
 * group g per one-sided leaf area, for light of 1 on a surface turned straight at direction d. 8 bytes.
 */
export interface LeafTable {
  readonly groupCount: number;
  readonly waves: readonly TableWave[];
}

/** Share of light that each kind of thing lets through; all of it where its owner is gone. */
export function kindShares({ kindOwner, kindShare }: LeafWave, keep?: KeepSet): Float64Array {
  return Float64Array.from(kindOwner, (owner, kind) =>
    keep === undefined || owner === 0 || keep[owner] === 1 ? (kindShare[kind] as number) : 1,
  );
}

/** Throws on an empty ledger and on a keep-set that does not fit it. */
export function checkLeaves({ waves, ownerCount }: LeafLedger, keep?: KeepSet): void {
  if (waves.length === 0) throw new Error('leafExposure: a ledger needs at least one wave, got none');
  if (keep !== undefined && keep.length !== ownerCount) {
    throw new Error(
      `leafExposure: keep needs one entry for each of ${ownerCount} owners, got ${keep.length}`,
    );
  }
}

/** Adds up in `into`, per group, the shares of light that reach the hits of one direction. */
function sumShares(wave: LeafWave, shares: Float64Array, direction: number, into: Float64Array): void {
  const { hitKind, hitShare, hitStart, kindGroup } = wave;
  const end = hitStart[direction + 1] as number;
  let passed = 1;
  for (let k = hitStart[direction] as number; k < end; k++) {
    let kind = hitKind[k] as number;
    if (kind < 0) {
      kind = ~kind;
      passed = 1;
    }
    const group = kindGroup[kind] as number;
    if (group >= 0) {
      const reached = hitShare === null ? passed : passed * (hitShare[k] as number);
      into[group] = (into[group] as number) + reached;
    }
    passed *= shares[kind] as number;
  }
}

/** Rows of a wave's matrix, made when they are asked for. */
export function leafRowMaker(wave: LeafWave, keep?: KeepSet): RowOf {
  const { groupCount, groupAreaM2, rayAreaM2 } = wave;
  const [shares, row] = [kindShares(wave, keep), new Float64Array(groupCount)];
  const perHit = groupAreaM2.map((areaM2) => (areaM2 > 0 ? rayAreaM2 / areaM2 : 0));
  return (direction) => {
    row.fill(0);
    sumShares(wave, shares, direction, row);
    for (let g = 0; g < groupCount; g++) row[g] = (row[g] as number) * (perHit[g] as number);
    return row;
  };
}

/**
 * Looks at every hit of the ledger once. Throws on an empty ledger and on a keep-set that does not fit it.
 * @param keep which owners stand; all when left out
 */
export function leafTable(ledger: LeafLedger, keep?: KeepSet): LeafTable {
  checkLeaves(ledger, keep);
  const { groupCount } = ledger;
  const waves = ledger.waves.map((wave): TableWave => {
    const { directions } = wave;
    const rowOf = leafRowMaker(wave, keep);
    const passed = new Float64Array(directions.length * groupCount);
    for (let d = 0; d < directions.length; d++) passed.set(rowOf(d), d * groupCount);
    return { directions, passed };
  });
  return { groupCount, waves };
}
