/** The light on groups of leaves, direction by direction: asked of any light it answers without looking at a hit. */
import { type LeafLedger, type LeafWave, rowPlace, weighedDirections } from './leafLedger.ts';
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

/** Adds up in `into`, per zone and group, the shares of light that reach the hits of one direction. */
function sumShares(wave: LeafWave, shares: Float64Array, direction: number, into: Float64Array): void {
  const { hitKind, hitShare, hitStart, kindGroup, groupCount, runStart, landing } = wave;
  const end = hitStart[direction + 1] as number;
  let [passed, run, row] = [1, runStart[direction] as number, 0];
  for (let k = hitStart[direction] as number; k < end; k++) {
    let kind = hitKind[k] as number;
    if (kind < 0) {
      kind = ~kind;
      passed = 1;
      if (landing !== undefined) row = (landing.runZone[run++] as number) * groupCount;
    }
    const group = kindGroup[kind] as number;
    if (group >= 0) {
      const reached = hitShare === null ? passed : passed * (hitShare[k] as number);
      into[row + group] = (into[row + group] as number) + reached;
    }
    passed *= shares[kind] as number;
  }
}

/** Rows of one direction at a time, one for each zone in which its rays come down. */
export class ZoneRows {
  readonly rows: Float64Array;
  private readonly perHit: Float64Array;
  private last = -1;
  private used: number;

  constructor({ groupCount, groupAreaM2, rayAreaM2, landing }: LeafWave) {
    this.rows = new Float64Array(((landing?.zones ?? 0) + 1) * groupCount);
    this.used = this.rows.length;
    this.perHit = groupAreaM2.map((areaM2) => (areaM2 > 0 ? rayAreaM2 / areaM2 : 0));
  }

  /** Empties the rows for another direction; whether there is something to be done. */
  turnTo(wave: LeafWave, direction: number): boolean {
    if (direction === this.last) return false;
    this.last = direction;
    this.rows.fill(0, 0, this.used);
    const isGround = wave.directions[direction]?.kind === 'ground';
    this.used = isGround ? this.rows.length : wave.groupCount;
    return true;
  }

  /** From sums over hits to light on the leaves. */
  scale(): void {
    const { rows, perHit, used } = this;
    for (let from = 0; from < used; from += perHit.length) {
      for (let g = 0; g < perHit.length; g++) {
        rows[from + g] = (rows[from + g] as number) * (perHit[g] as number);
      }
    }
  }

  of(zone: number): Float64Array {
    const { length } = this.perHit;
    return this.rows.subarray(zone * length, (zone + 1) * length);
  }
}

/** Rows of a wave's matrix, made when they are asked for; one for each of `weighedDirections`. */
export function leafRowMaker(wave: LeafWave, keep?: KeepSet): RowOf {
  const [shares, rows] = [kindShares(wave, keep), new ZoneRows(wave)];
  return (row) => {
    const [direction, zone] = rowPlace(wave, row);
    if (rows.turnTo(wave, direction)) {
      sumShares(wave, shares, direction, rows.rows);
      rows.scale();
    }
    return rows.of(zone);
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
    const directions = weighedDirections(wave);
    const rowOf = leafRowMaker(wave, keep);
    const passed = new Float64Array(directions.length * groupCount);
    for (let d = 0; d < directions.length; d++) passed.set(rowOf(d), d * groupCount);
    return { directions, passed };
  });
  return { groupCount, waves };
}
