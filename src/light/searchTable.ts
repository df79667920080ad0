/** The ledger boiled down for a search over keep-sets in one light. */
import type { CellLight } from './directions.ts';
import type { KeepSet, Ledger, Wave } from './ledger.ts';
import { rayWeights, type WaveWeights } from './rayWeights.ts';
import { type OwnerListArrays, OwnerLists } from './trace/ownerLists.ts';

export interface SearchOptions {
  /** Entry per owner: 1 may be toggled. Owners left at 0 stay as `keep` has them, and lists shrink and merge. */
  readonly free: Uint8Array;
  /** Which owners stand at first. */
  readonly keep: KeepSet;
  /** Only the first so many receivers (the nodes come first); all when left out. */
  readonly receiverCount?: number;
}

/** Entry k of a row: entries start[row] to start[row + 1] (excluded) of the two others. */
interface Rows {
  readonly start: Int32Array;
  readonly column: Int32Array;
  readonly weight: Float64Array;
}

/**
 * Sum over the lists of weight x share that the list lets through gives a receiver's share of open sky: the same as
 * `exposure` gives it, up to rounding.
 */
export class SearchTable {
  readonly receiverCount: number;
  /** Share of open sky of each receiver for the owners that now stand. Live: read it, never write. */
  readonly share: Float64Array;
  /** Which owners now stand. Change it by `toggle` and `reset` alone. */
  readonly keep: KeepSet;
  /** Distinct lists of free owners; list 0 is empty. */
  readonly lists: OwnerListArrays;
  /** Row: receiver; column: list. */
  readonly byReceiver: Rows;
  /** Row: list; column: receiver. */
  private readonly byList: Rows;
  /** Row: owner; column: list that holds it. */
  private readonly byOwner: Rows;
  /** Per list: product of the shares above 0 of its standing owners, and how many of them let nothing through. */
  private readonly product: Float64Array;
  private readonly dark: Int32Array;
  private readonly free: Uint8Array;

  constructor(lists: OwnerListArrays, byReceiver: Rows, { free, keep }: SearchOptions) {
    const listCount = lists.listStart.length - 1;
    this.lists = lists;
    this.byReceiver = byReceiver;
    this.byList = transposed(byReceiver, listCount);
    const entries = {
      start: lists.listStart,
      column: lists.listOwner,
      weight: Float64Array.from(lists.listShare),
    };
    this.byOwner = transposed(entries, free.length);
    this.receiverCount = byReceiver.start.length - 1;
    this.free = free.slice();
    this.keep = keep.slice();
    this.product = new Float64Array(listCount);
    this.dark = new Int32Array(listCount);
    this.share = new Float64Array(this.receiverCount);
    this.reset(keep);
  }

  /** The lists that hold an owner. */
  listsOf(owner: number): Int32Array {
    const { start, column } = this.byOwner;
    return column.subarray(start[owner], start[owner + 1]);
  }

  /** Share of open sky of a receiver, summed afresh for the owners that now stand. */
  shareOf(receiver: number): number {
    const { start, column, weight } = this.byReceiver;
    let sum = 0;
    for (let k = start[receiver] as number; k < (start[receiver + 1] as number); k++) {
      sum += (weight[k] as number) * this.shareThrough(column[k] as number);
    }
    return sum;
  }

  /**
   * Takes an owner away, or puts it back, and brings `share` up to date: only lists that hold it are touched. What is
   * carried along drifts by rounding alone (1e-13 after a thousand toggles); `reset` sums afresh.
   * An owner alone: what grows on it is for the caller to toggle too.
   */
  toggle(owner: number): void {
    if (this.free[owner] !== 1) throw new Error(`toggle: owner ${owner} is not free in this table`);
    const stands = 1 - (this.keep[owner] as number);
    this.keep[owner] = stands;
    const { product, dark, byOwner, byList } = this;
    const end = byOwner.start[owner + 1] as number;
    for (let k = byOwner.start[owner] as number; k < end; k++) {
      const [list, passed] = [byOwner.column[k] as number, byOwner.weight[k] as number];
      const before = this.shareThrough(list);
      if (passed === 0) dark[list] = (dark[list] as number) + 2 * stands - 1;
      else
        product[list] =
          stands === 1 ? (product[list] as number) * passed : (product[list] as number) / passed;
      const change = this.shareThrough(list) - before;
      if (change !== 0) this.addChange(byList, list, change);
    }
  }

  private addChange({ start, column, weight }: Rows, list: number, change: number): void {
    const end = start[list + 1] as number;
    for (let k = start[list] as number; k < end; k++) {
      const receiver = column[k] as number;
      this.share[receiver] = (this.share[receiver] as number) + (weight[k] as number) * change;
    }
  }

  /** Sums everything afresh for a keep-set; owners that are not free must stand as they did. */
  reset(keep: KeepSet): void {
    if (keep.length !== this.keep.length) {
      throw new Error(
        `reset: keep needs one entry for each of ${this.keep.length} owners, got ${keep.length}`,
      );
    }
    this.keep.forEach((stands, owner) => {
      if (this.free[owner] !== 1 && keep[owner] !== stands) {
        throw new Error(`reset: owner ${owner} is not free in this table and cannot change`);
      }
    });
    this.keep.set(keep);
    this.multiply();
    for (let r = 0; r < this.receiverCount; r++) this.share[r] = this.shareOf(r);
  }

  private shareThrough(list: number): number {
    return this.dark[list] === 0 ? (this.product[list] as number) : 0;
  }

  private multiply(): void {
    const { listStart, listOwner, listShare } = this.lists;
    for (let list = 0; list < this.product.length; list++) {
      let [product, dark] = [1, 0];
      for (let i = listStart[list] as number; i < (listStart[list + 1] as number); i++) {
        if (this.keep[listOwner[i] as number] !== 1) continue;
        if (listShare[i] === 0) dark++;
        else product *= listShare[i] as number;
      }
      this.product[list] = product;
      this.dark[list] = dark;
    }
  }
}

function transposed({ start, column, weight }: Rows, columnCount: number): Rows {
  const turned = {
    start: new Int32Array(columnCount + 1),
    column: new Int32Array(column.length),
    weight: new Float64Array(column.length),
  };
  for (const c of column) turned.start[c + 1] = (turned.start[c + 1] as number) + 1;
  for (let c = 0; c < columnCount; c++) {
    turned.start[c + 1] = (turned.start[c + 1] as number) + (turned.start[c] as number);
  }
  const next = turned.start.slice();
  for (let row = 0; row + 1 < start.length; row++) {
    for (let k = start[row] as number; k < (start[row + 1] as number); k++) {
      const c = column[k] as number;
      const at = next[c] as number;
      next[c] = at + 1;
      turned.column[at] = row;
      turned.weight[at] = weight[k] as number;
    }
  }
  return turned;
}

interface FoldedLists {
  /** Number of the list of free owners that is left of each list of the wave. */
  readonly list: Int32Array;
  /** Share that the standing owners which are not free let through. */
  readonly share: Float64Array;
}

/** 1 for the lists of a wave that rays of the first receivers have. */
function listsInUse({ rayList, directions, receiverCount, listStart }: Wave, receivers: number): Uint8Array {
  const inUse = new Uint8Array(listStart.length - 1);
  for (let d = 0; d < directions.length; d++) {
    for (let r = 0; r < receivers; r++) inUse[rayList[d * receiverCount + r] as number] = 1;
  }
  return inUse;
}

/** Lists that no wanted ray has, and those ended by what stands for good, become the empty list with share 0. */
function foldLists(wave: Wave, receivers: number, lists: OwnerLists, options: SearchOptions): FoldedLists {
  const { listStart, listVeil, veilOwner, veilShare } = wave;
  const { free, keep } = options;
  const standing = Float64Array.from(veilShare, (share, veil) => {
    const owner = veilOwner[veil] as number;
    return owner === 0 || (free[owner] !== 1 && keep[owner] === 1) ? share : 1;
  });
  const count = listStart.length - 1;
  const inUse = listsInUse(wave, receivers);
  const folded = { list: new Int32Array(count), share: new Float64Array(count) };
  for (let l = 0; l < count; l++) {
    const [from, to] = [listStart[l] as number, listStart[l + 1] as number];
    let share = inUse[l] as number;
    for (let i = from; i < to; i++) share *= standing[listVeil[i] as number] as number;
    folded.share[l] = share;
    if (share === 0) continue;
    for (let i = from; i < to; i++) {
      const veil = listVeil[i] as number;
      const owner = veilOwner[veil] as number;
      if (owner !== 0 && free[owner] === 1) lists.put(owner, veilShare[veil] as number);
    }
    folded.list[l] = lists.close();
  }
  return folded;
}

/** Adds up, for one receiver, the weights of its rays by list; returns the lists met for the first time. */
function addRays(
  receiver: number,
  wave: Wave,
  { list, share }: FoldedLists,
  weights: WaveWeights,
  sums: Float64Array,
  met: number[],
): void {
  const stances = wave.stanceCosine.length / wave.directions.length;
  const stance = wave.receiverStance[receiver] as number;
  for (let d = 0; d < wave.directions.length; d++) {
    const ray = d * wave.receiverCount + receiver;
    const rayList = wave.rayList[ray] as number;
    const open = (wave.stanceCosine[d * stances + stance] as number) * (wave.rayCloudShare?.[ray] ?? 1);
    const weight = (weights.weight[d] as number) * open * (share[rayList] as number);
    if (weight === 0) continue;
    const l = list[rayList] as number;
    if (sums[l] === 0) met.push(l);
    sums[l] = (sums[l] as number) + weight;
  }
}

/**
 * Merges the waves: for each receiver the weight of each list of free owners, equal lists joined. Throws on option
 * arrays that are not one entry an owner.
 */
export function mergeForSearch(ledger: Ledger, light: CellLight, options: SearchOptions): SearchTable {
  const { free, keep, receiverCount = ledger.receiverCount } = options;
  if (free.length !== ledger.ownerCount || keep.length !== ledger.ownerCount) {
    throw new Error(
      `mergeForSearch: free and keep need one entry for each of ${ledger.ownerCount} owners, got ${free.length} and ${keep.length}`,
    );
  }
  const waveCount = ledger.waves.length;
  const weights = rayWeights(ledger, light);
  const interned = new OwnerLists();
  const folded = ledger.waves.map((wave) => foldLists(wave, receiverCount, interned, options));
  const lists = interned.arrays();
  const sums = new Float64Array(lists.listStart.length - 1);
  const start = new Int32Array(receiverCount + 1);
  const column: number[] = [];
  const weight: number[] = [];
  for (let r = 0; r < receiverCount; r++) {
    const met: number[] = [];
    ledger.waves.forEach((wave, w) => {
      addRays(r, wave, folded[w] as FoldedLists, weights[w] as WaveWeights, sums, met);
    });
    for (const l of met) {
      column.push(l);
      weight.push((sums[l] as number) / waveCount);
      sums[l] = 0;
    }
    start[r + 1] = column.length;
  }
  const rows = { start, column: Int32Array.from(column), weight: Float64Array.from(weight) };
  return new SearchTable(lists, rows, options);
}
