/** From the ledger to a search table: what stands for good folded into the weights, equal lists joined. */
import type { CellLight } from './directions.ts';
import type { Ledger, Wave } from './ledger.ts';
import { rayWeights, type WaveWeights } from './rayWeights.ts';
import { type SearchOptions, SearchTable } from './searchTable.ts';
import { OwnerLists } from './trace/ownerLists.ts';

/** What a ledger in a light gives to the rows of a table. */
export interface RowSource {
  readonly ledger: Ledger;
  readonly light: CellLight;
  /** Per row: the receiver it reads here, -1 for none; and the factor by which its light counts. */
  readonly receiver: Int32Array;
  readonly factor: Float64Array;
}

interface FoldedLists {
  /** Number of the list of free owners that is left of each list of the wave. */
  readonly list: Int32Array;
  /** Share that the standing owners which are not free let through. */
  readonly share: Float64Array;
}

/** 1 for the lists of a wave that rays of the wanted receivers have. */
function listsInUse({ rayList, directions, receiverCount, listStart }: Wave, wanted: Int32Array): Uint8Array {
  const inUse = new Uint8Array(listStart.length - 1);
  for (let d = 0; d < directions.length; d++) {
    for (const r of wanted) if (r >= 0) inUse[rayList[d * receiverCount + r] as number] = 1;
  }
  return inUse;
}

/** Lists that no wanted ray has, and those ended by what stands for good, become the empty list with share 0. */
function foldLists(wave: Wave, wanted: Int32Array, lists: OwnerLists, options: SearchOptions): FoldedLists {
  const { listStart, listVeil, veilOwner, veilShare } = wave;
  const { free, keep } = options;
  const standing = Float64Array.from(veilShare, (share, veil) => {
    const owner = veilOwner[veil] as number;
    return owner === 0 || (free[owner] !== 1 && keep[owner] === 1) ? share : 1;
  });
  const count = listStart.length - 1;
  const inUse = listsInUse(wave, wanted);
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

interface FoldedSource extends RowSource {
  readonly weights: readonly WaveWeights[];
  readonly folded: readonly FoldedLists[];
}

function foldSource(source: RowSource, lists: OwnerLists, options: SearchOptions): FoldedSource {
  const { ledger, light, receiver } = source;
  const folded = ledger.waves.map((wave) => foldLists(wave, receiver, lists, options));
  return { ...source, weights: rayWeights(ledger, light), folded };
}

/** Adds up, for one row, what its rays of one wave bring, by list; `met` gets the lists met for the first time. */
function addRays(source: FoldedSource, row: number, w: number, sums: Float64Array, met: number[]): void {
  const [wave, { list, share }] = [source.ledger.waves[w] as Wave, source.folded[w] as FoldedLists];
  const { weight: weights } = source.weights[w] as WaveWeights;
  const receiver = source.receiver[row] as number;
  const factor = (source.factor[row] as number) / source.ledger.waves.length;
  const stances = wave.stanceCosine.length / wave.directions.length;
  const stance = wave.receiverStance[receiver] as number;
  for (let d = 0; d < wave.directions.length; d++) {
    const ray = d * wave.receiverCount + receiver;
    const rayList = wave.rayList[ray] as number;
    const open = (wave.stanceCosine[d * stances + stance] as number) * (wave.rayCloudShare?.[ray] ?? 1);
    const weight = factor * (weights[d] as number) * open * (share[rayList] as number);
    if (weight === 0) continue;
    const l = list[rayList] as number;
    if (sums[l] === 0) met.push(l);
    sums[l] = (sums[l] as number) + weight;
  }
}

function checkOptions(sources: readonly RowSource[], { free, keep }: SearchOptions): void {
  for (const { ledger } of sources) {
    if (free.length !== ledger.ownerCount || keep.length !== ledger.ownerCount) {
      throw new Error(
        `mergeForSearch: free and keep need one entry for each of ${ledger.ownerCount} owners, got ${free.length} and ${keep.length}`,
      );
    }
  }
}

/**
 * A table whose row r is the sum over the sources of factor x share of open sky of the row's receiver there: light that is a
 * mean over stages of a season needs one row, not one a stage. All sources have the same owners and as many rows. Throws on
 * option arrays that are not one entry an owner.
 */
export function mergeRows(sources: readonly RowSource[], options: SearchOptions): SearchTable {
  checkOptions(sources, options);
  const interned = new OwnerLists();
  const folded = sources.map((source) => foldSource(source, interned, options));
  const lists = interned.arrays();
  const sums = new Float64Array(lists.listStart.length - 1);
  const rowCount = sources[0]?.receiver.length ?? 0;
  const start = new Int32Array(rowCount + 1);
  const list: number[] = [];
  const weight: number[] = [];
  for (let r = 0; r < rowCount; r++) {
    const met: number[] = [];
    for (const source of folded) {
      if ((source.receiver[r] as number) < 0) continue;
      for (let w = 0; w < source.ledger.waves.length; w++) addRays(source, r, w, sums, met);
    }
    for (const l of met) {
      list.push(l);
      weight.push(sums[l] as number);
      sums[l] = 0;
    }
    start[r + 1] = list.length;
  }
  const rows = { start, list: Int32Array.from(list), weight: Float64Array.from(weight) };
  return new SearchTable(lists, rows, options);
}

/** A row for each receiver: its share of open sky, the same as `exposure` gives it, up to rounding. */
export function mergeForSearch(ledger: Ledger, light: CellLight, options: SearchOptions): SearchTable {
  const receiver = Int32Array.from({ length: ledger.receiverCount }, (_, r) => r);
  const factor = new Float64Array(ledger.receiverCount).fill(1);
  return mergeRows([{ ledger, light, receiver, factor }], options);
}
