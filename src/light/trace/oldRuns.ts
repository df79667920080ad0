/** The rays of a traced wave that a change of the scene leaves as they were. */
import type { LeafWave } from '../leafLedger.ts';
import type { Collected } from './lattice/collect.ts';
import type { Lattice } from './lattice/lattice.ts';
import type { Spans } from './lattice/sweep.ts';

interface Place {
  readonly direction: number;
  readonly lattice: Lattice;
  /** Rays that were traced again. */
  readonly spans: Spans;
}

/** Adds run `run` of another collection, its hits those from `from` to `end` (excluded). */
function copyFresh(fresh: Collected, run: number, from: number, end: number, into: Collected): void {
  into.ray[into.runs++] = fresh.ray[run] as number;
  into.hit.set(fresh.hit.subarray(from, end), into.count);
  if (into.share !== null && fresh.share !== null) {
    into.share.set(fresh.share.subarray(from, end), into.count);
  }
  into.count += end - from;
}

/** Goes through runs that are already traced again, in the order of their rays. */
class FreshRuns {
  private readonly fresh: Collected;
  private readonly into: Collected;
  private run = 0;
  private hit = 0;

  constructor(fresh: Collected, into: Collected) {
    this.fresh = fresh;
    this.into = into;
  }

  /** Adds all whose ray comes before. */
  addBefore(ray: number): void {
    const { fresh, into } = this;
    while (this.run < fresh.runs && (fresh.ray[this.run] as number) < ray) {
      const from = this.hit++;
      while (this.hit < fresh.count && (fresh.hit[this.hit] as number) >= 0) this.hit++;
      copyFresh(fresh, this.run++, from, this.hit, into);
    }
  }
}

export class OldRuns {
  private readonly wave: LeafWave;
  /** Kinds of the wave are numbered anew. */
  private readonly kindAfter: Int32Array;

  constructor(wave: LeafWave, kindAfter: Int32Array) {
    this.wave = wave;
    this.kindAfter = kindAfter;
  }

  /** Adds the runs of a direction in the order of their rays: the fresh ones, and the old ones outside the spans. */
  mergeWith(fresh: Collected, { direction, lattice, spans }: Place, into: Collected): void {
    const { hitKind, hitStart, runRay, runStart, window } = this.wave;
    const [hitsEnd, runsEnd] = [hitStart[direction + 1] as number, runStart[direction + 1] as number];
    const firstRun = runStart[direction] as number;
    let hit = hitStart[direction] as number;
    into.reserve(fresh.count + hitsEnd - hit, fresh.runs + runsEnd - firstRun);
    const freshRuns = new FreshRuns(fresh, into);
    const [left, low, columns] = window.subarray(4 * direction) as unknown as [number, number, number];
    const { left: newLeft, low: newLow, columns: newColumns, rows: newRows } = lattice;
    let [row, rowEnd] = [low - newLow, columns];
    for (let run = firstRun; run < runsEnd; run++) {
      const [from, ray] = [hit++, runRay[run] as number];
      while (hit < hitsEnd && (hitKind[hit] as number) >= 0) hit++;
      for (; ray >= rowEnd; rowEnd += columns) row++;
      const column = left + ray - (rowEnd - columns);
      if (row < 0 || row >= newRows || column < newLeft || column >= newLeft + newColumns) continue;
      if (column >= (spans.left[row] as number) && column <= (spans.right[row] as number)) continue;
      const newRay = row * newColumns + column - newLeft;
      freshRuns.addBefore(newRay);
      into.ray[into.runs++] = newRay;
      this.copy(from, hit, into);
    }
    freshRuns.addBefore(Infinity);
  }

  private copy(from: number, end: number, into: Collected): void {
    const { hitKind, hitShare } = this.wave;
    const { kindAfter } = this;
    for (let k = from; k < end; k++) {
      const kind = hitKind[k] as number;
      const at = into.count++;
      into.hit[at] = kind < 0 ? ~(kindAfter[~kind] as number) : (kindAfter[kind] as number);
      if (into.share !== null && hitShare !== null) into.share[at] = hitShare[k] as number;
    }
  }
}
