/** The ledger boiled down for a search over keep-sets: light that follows owner by owner. */
import type { KeepSet } from './ledger.ts';
import type { OwnerListArrays } from './trace/ownerLists.ts';

export interface SearchOptions {
  /** Entry per owner: 1 may be toggled. Owners left at 0 stay as `keep` has them, and lists shrink and merge. */
  readonly free: Uint8Array;
  /** Which owners stand at first. */
  readonly keep: KeepSet;
}

/** Row r: entries start[r] to start[r + 1] (excluded), each a list of free owners and what comes along it were they all gone. */
export interface ListRows {
  readonly start: Int32Array;
  readonly list: Int32Array;
  readonly weight: Float64Array;
}

/**
 * Rows of light, each a sum over lists of owners of weight x share that the list lets through. Every entry of a row carries
 * its own light along, so that a toggle reads the entries of one owner in the order of memory.
 */
export class SearchTable {
  readonly rowCount: number;
  /** Light of each row for the owners that now stand. Live: read it, never write. */
  readonly share: Float64Array;
  /** Per row: 1 when its light has changed; whoever reads it sets it back to 0. */
  readonly changed: Uint8Array;
  /** Which owners now stand. Change it by `toggle` and `reset` alone. */
  readonly keep: KeepSet;
  private readonly rows: ListRows;
  private readonly rowOf: Int32Array;
  /** Per entry: what passes the owners that stand and let some light through, and how many stand that let none. */
  private readonly passing: Float64Array;
  private readonly dark: Uint16Array;
  /** Owner o: items start[o] to start[o + 1]; those that let light through first, the opaque ones from opaqueStart[o] on. */
  private readonly ownerStart: Int32Array;
  private readonly opaqueStart: Int32Array;
  /** Per item: entry, ascending within each part; and share that the owner lets through there. */
  private readonly itemEntry: Int32Array;
  private readonly itemShare: Float32Array;
  private readonly free: Uint8Array;
  /** What `peek` found: so many rows, each once, and how their light would change. Live: read them before the next call. */
  peekCount = 0;
  readonly peekRow: Int32Array;
  readonly peekChange: Float64Array;
  /** Per row: its place in `peekRow` plus 1; 0 when it is not there. */
  private readonly peekAt: Int32Array;

  constructor(lists: OwnerListArrays, rows: ListRows, { free, keep }: SearchOptions) {
    this.rows = rows;
    this.rowCount = rows.start.length - 1;
    this.free = free.slice();
    this.keep = keep.slice();
    this.share = new Float64Array(this.rowCount);
    this.changed = new Uint8Array(this.rowCount).fill(1);
    this.peekRow = new Int32Array(this.rowCount);
    this.peekChange = new Float64Array(this.rowCount);
    this.peekAt = new Int32Array(this.rowCount);
    const entries = rows.list.length;
    this.passing = new Float64Array(entries);
    this.dark = new Uint16Array(entries);
    this.rowOf = new Int32Array(entries);
    for (let r = 0; r < this.rowCount; r++) this.rowOf.fill(r, rows.start[r], rows.start[r + 1]);
    const byOwner = itemsByOwner(lists, rows.list, free.length);
    this.ownerStart = byOwner.start;
    this.opaqueStart = byOwner.opaqueStart;
    this.itemEntry = byOwner.entry;
    this.itemShare = byOwner.share;
    this.sumAfresh();
  }

  /** Whether an owner may be toggled. */
  frees(owner: number): boolean {
    return this.free[owner] === 1;
  }

  /** A table of the same rows that is toggled for itself; what does not change is shared. */
  fork(): SearchTable {
    const { share, changed, keep, passing, dark, peekRow, peekChange, peekAt } = this;
    const own = { share, changed, keep, passing, dark, peekRow, peekChange, peekAt };
    const copies = Object.entries(own).map(([name, array]) => [name, array.slice()]);
    return Object.assign(Object.create(SearchTable.prototype), this, Object.fromEntries(copies));
  }

  /** How many entries hold an owner: what a toggle of it costs. */
  entriesOf(owner: number): number {
    return (this.ownerStart[owner + 1] as number) - (this.ownerStart[owner] as number);
  }

  /**
   * Takes an owner away, or puts it back, and brings `share` up to date: only entries that hold it are touched. What is
   * carried along drifts by rounding alone (1e-13 after a thousand toggles); `reset` sums afresh.
   * An owner alone: what grows on it is for the caller to toggle too.
   */
  toggle(owner: number): void {
    if (this.free[owner] !== 1) throw new Error(`toggle: owner ${owner} is not free in this table`);
    const stands = 1 - (this.keep[owner] as number);
    this.keep[owner] = stands;
    this.veil(owner, stands);
    this.shut(owner, stands);
  }

  /** What a toggle of an owner would change, in `peekRow` and `peekChange`; the table stays as it is. */
  peek(owner: number): void {
    if (this.free[owner] !== 1) throw new Error(`peek: owner ${owner} is not free in this table`);
    const { itemEntry, itemShare, passing, dark, rowOf } = this;
    for (let n = 0; n < this.peekCount; n++) this.peekAt[this.peekRow[n] as number] = 0;
    this.peekCount = 0;
    const stands = 1 - (this.keep[owner] as number);
    const [opaque, end] = [this.opaqueStart[owner] as number, this.ownerStart[owner + 1] as number];
    let [row, sum] = [-1, 0];
    for (let k = this.ownerStart[owner] as number; k < opaque; k++) {
      const entry = itemEntry[k] as number;
      if (dark[entry] !== 0) continue;
      const before = passing[entry] as number;
      const share = itemShare[k] as number;
      if (rowOf[entry] !== row) {
        this.note(row, sum);
        [row, sum] = [rowOf[entry] as number, 0];
      }
      sum += stands === 1 ? before * share - before : before / share - before;
    }
    this.note(row, sum);
    for (let k = opaque; k < end; k++) {
      const entry = itemEntry[k] as number;
      if (dark[entry] !== 1 - stands) continue;
      const light = passing[entry] as number;
      this.note(rowOf[entry] as number, stands === 1 ? -light : light);
    }
  }

  /** Place of a row in `peekRow`; -1 when it would stay as it is. */
  peekedAt(row: number): number {
    return (this.peekAt[row] as number) - 1;
  }

  private note(row: number, change: number): void {
    if (row < 0 || change === 0) return;
    const known = (this.peekAt[row] as number) - 1;
    if (known >= 0) {
      this.peekChange[known] = (this.peekChange[known] as number) + change;
      return;
    }
    this.peekRow[this.peekCount] = row;
    this.peekChange[this.peekCount] = change;
    this.peekAt[row] = ++this.peekCount;
  }

  /** Sums everything afresh for a keep-set; owners that are not free must stand as they did. */
  reset(keep: KeepSet): void {
    if (keep.length !== this.keep.length) {
      throw new Error(
        `reset: keep needs one entry for each of ${this.keep.length} owners, got ${keep.length}`,
      );
    }
    for (let owner = 0; owner < keep.length; owner++) {
      if (this.free[owner] !== 1 && keep[owner] !== this.keep[owner]) {
        throw new Error(`reset: owner ${owner} is not free in this table and cannot change`);
      }
    }
    this.keep.set(keep);
    this.sumAfresh();
  }

  private veil(owner: number, stands: number): void {
    const { itemEntry, itemShare, passing, dark, rowOf } = this;
    const end = this.opaqueStart[owner] as number;
    let [row, sum] = [-1, 0];
    for (let k = this.ownerStart[owner] as number; k < end; k++) {
      const entry = itemEntry[k] as number;
      const before = passing[entry] as number;
      const after = stands === 1 ? before * (itemShare[k] as number) : before / (itemShare[k] as number);
      passing[entry] = after;
      if (dark[entry] !== 0) continue;
      if (rowOf[entry] !== row) {
        this.add(row, sum);
        [row, sum] = [rowOf[entry] as number, 0];
      }
      sum += after - before;
    }
    this.add(row, sum);
  }

  private shut(owner: number, stands: number): void {
    const { itemEntry, passing, dark, rowOf } = this;
    const end = this.ownerStart[owner + 1] as number;
    for (let k = this.opaqueStart[owner] as number; k < end; k++) {
      const entry = itemEntry[k] as number;
      const before = dark[entry] as number;
      dark[entry] = before + 2 * stands - 1;
      if (before === 1 - stands) {
        const light = passing[entry] as number;
        this.add(rowOf[entry] as number, stands === 1 ? -light : light);
      }
    }
  }

  private add(row: number, change: number): void {
    if (row < 0 || change === 0) return;
    this.share[row] = (this.share[row] as number) + change;
    this.changed[row] = 1;
  }

  private sumAfresh(): void {
    const { rows, passing, dark, share, rowOf } = this;
    passing.set(rows.weight);
    dark.fill(0);
    for (let owner = 0; owner < this.keep.length; owner++) {
      if (this.keep[owner] !== 1) continue;
      const [opaque, end] = [this.opaqueStart[owner] as number, this.ownerStart[owner + 1] as number];
      for (let k = this.ownerStart[owner] as number; k < end; k++) {
        const entry = this.itemEntry[k] as number;
        if (k < opaque) passing[entry] = (passing[entry] as number) * (this.itemShare[k] as number);
        else dark[entry] = (dark[entry] as number) + 1;
      }
    }
    share.fill(0);
    this.changed.fill(1);
    for (let entry = 0; entry < passing.length; entry++) {
      const row = rowOf[entry] as number;
      if (dark[entry] === 0) share[row] = (share[row] as number) + (passing[entry] as number);
    }
  }
}

/** Every entry's owners, gathered by owner. */
function itemsByOwner(lists: OwnerListArrays, entryList: Int32Array, ownerCount: number) {
  const { listStart, listOwner, listShare } = lists;
  const [veils, opaque] = [new Int32Array(ownerCount), new Int32Array(ownerCount)];
  const eachItem = (take: (owner: number, share: number, entry: number) => void): void => {
    for (let entry = 0; entry < entryList.length; entry++) {
      const list = entryList[entry] as number;
      for (let i = listStart[list] as number; i < (listStart[list + 1] as number); i++) {
        take(listOwner[i] as number, listShare[i] as number, entry);
      }
    }
  };
  eachItem((owner, share) => {
    const count = share > 0 ? veils : opaque;
    count[owner] = (count[owner] as number) + 1;
  });
  const start = new Int32Array(ownerCount + 1);
  const opaqueStart = new Int32Array(ownerCount);
  for (let owner = 0; owner < ownerCount; owner++) {
    opaqueStart[owner] = (start[owner] as number) + (veils[owner] as number);
    start[owner + 1] = (opaqueStart[owner] as number) + (opaque[owner] as number);
  }
  const itemCount = start[ownerCount] as number;
  const gathered = {
    start,
    opaqueStart,
    entry: new Int32Array(itemCount),
    share: new Float32Array(itemCount),
  };
  const [nextVeil, nextOpaque] = [start.slice(0, ownerCount), opaqueStart.slice()];
  eachItem((owner, share, entry) => {
    const next = share > 0 ? nextVeil : nextOpaque;
    const at = next[owner] as number;
    next[owner] = at + 1;
    gathered.entry[at] = entry;
    gathered.share[at] = share;
  });
  return gathered;
}
