/** How much of a lattice is followed in one go. */
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
}

/** What is looked at in one go. */
export interface Sweep {
  readonly lattice: Lattice;
  readonly followed: Followed;
}
