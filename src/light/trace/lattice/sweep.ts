/** How much of a lattice is followed in one go, and which things can be there. */
import type { Lattice } from './lattice.ts';
import type { Cover } from './plane.ts';

/** Row by row the columns that are followed. Only the first `rows` entries count. */
export class Spans {
  /** First and last column of row `low + y`, at index y; the last is below the first where none is followed. */
  left = new Int32Array(64);
  right = new Int32Array(64);
  low = 0;
  rows = 0;

  private reset({ low, rows }: Lattice, left: number, right: number): void {
    if (this.left.length < rows) {
      this.left = new Int32Array(2 * rows);
      this.right = new Int32Array(2 * rows);
    }
    this.low = low;
    this.rows = rows;
    this.left.fill(left, 0, rows);
    this.right.fill(right, 0, rows);
  }

  setEmpty(lattice: Lattice): void {
    this.reset(lattice, lattice.left + lattice.columns, lattice.left - 1);
  }

  setWhole(lattice: Lattice): void {
    this.reset(lattice, lattice.left, lattice.left + lattice.columns - 1);
  }

  /** Takes in what a thing covers, and all between. */
  add({ left, right, low, high }: Cover): void {
    for (let y = low - this.low; y <= high - this.low; y++) {
      this.left[y] = Math.min(this.left[y] as number, left);
      this.right[y] = Math.max(this.right[y] as number, right);
    }
  }

  /** Whether any ray of a rectangle is followed. */
  meets(left: number, right: number, low: number, high: number): boolean {
    const last = Math.min(this.rows - 1, high - this.low);
    for (let y = Math.max(0, low - this.low); y <= last; y++) {
      const [from, to] = [this.left[y] as number, this.right[y] as number];
      if (from <= to && from <= right && to >= left) return true;
    }
    return false;
  }
}

/** Things first[k] to end[k] (excluded), in increasing order; only the first `count` count. */
export class Ranges {
  /** First and end by turns. */
  entry = new Int32Array(64);
  count = 0;

  setAll(things: number): void {
    this.count = 0;
    this.add(0, things);
  }

  add(first: number, end: number): void {
    const at = 2 * this.count;
    if (at > 0 && this.entry[at - 1] === first) {
      this.entry[at - 1] = end;
      return;
    }
    if (at + 2 > this.entry.length) {
      const { entry } = this;
      this.entry = new Int32Array(2 * entry.length);
      this.entry.set(entry);
    }
    this.entry[at] = first;
    this.entry[at + 1] = end;
    this.count++;
  }

  /** Calls with each thing from `first` on, of so many, counted from there. */
  each(first: number, count: number, visit: (n: number) => void): void {
    for (let k = 0; k < this.count; k++) {
      const from = Math.max(0, (this.entry[2 * k] as number) - first);
      const end = Math.min(count, (this.entry[2 * k + 1] as number) - first);
      for (let n = from; n < end; n++) visit(n);
    }
  }
}

/** Followed are the rays of the lattice that are in the spans; things outside the ranges meet none of them. */
export interface Sweep {
  readonly lattice: Lattice;
  readonly spans: Spans;
  readonly ranges: Ranges;
}
