/** How much of a lattice is followed in one go, and which things can be there. */
import type { Lattice } from './lattice.ts';

const room = (entries: Int32Array, length: number): Int32Array =>
  entries.length < length ? new Int32Array(2 * length) : entries;

/** The rays of a lattice that are followed: all, or single ones. */
export class Followed {
  /** First and last column of row `low + y`, at index y; the last is below the first where none is followed. */
  left: Int32Array = new Int32Array(64);
  right: Int32Array = new Int32Array(64);
  low = 0;
  rows = 0;
  /** Where true, only rays with a 1 in `ray` are followed; its first rows x columns entries count. */
  isSparse = false;
  ray = new Uint8Array(64);

  private reset({ low, rows }: Lattice, left: number, right: number): void {
    this.left = room(this.left, rows);
    this.right = room(this.right, rows);
    this.low = low;
    this.rows = rows;
    this.left.fill(left, 0, rows);
    this.right.fill(right, 0, rows);
  }

  setAll(lattice: Lattice): void {
    this.isSparse = false;
    this.reset(lattice, lattice.left, lattice.left + lattice.columns - 1);
  }

  setNone(lattice: Lattice): void {
    this.isSparse = true;
    this.reset(lattice, lattice.left + lattice.columns, lattice.left - 1);
    const rays = lattice.rows * lattice.columns;
    if (this.ray.length < rays) this.ray = new Uint8Array(2 * rays);
    else this.ray.fill(0, 0, rays);
  }

  /** Follows a ray of the lattice, by its number there. */
  add(ray: number, { left, columns }: Lattice): void {
    const y = Math.floor(ray / columns);
    const x = left + ray - y * columns;
    this.ray[ray] = 1;
    if (x < (this.left[y] as number)) this.left[y] = x;
    if (x > (this.right[y] as number)) this.right[y] = x;
  }

  /** Whether rays of a rectangle may be followed. */
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

/** Things outside the ranges meet none of the rays that are followed. */
export interface Sweep {
  readonly lattice: Lattice;
  readonly followed: Followed;
  readonly ranges: Ranges;
}
