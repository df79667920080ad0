/** How much of a lattice is followed in one go. */
import type { Lattice } from './lattice.ts';

const room = (entries: Int32Array, length: number): Int32Array =>
  entries.length < length ? new Int32Array(2 * length) : entries;

/** The rays of a lattice that are followed: all, or single ones. */
export interface FollowedRays {
  /** First and last column of row `low + y` of the lattice, at index y; the last is below the first where none is followed. */
  readonly left: Int32Array;
  readonly right: Int32Array;
  /**
   * Where true, only some rays are followed: ray k of the lattice by the number ray[k] - 1, which its hits go by; not where it is 0.
   */
  readonly isSparse: boolean;
  readonly ray: Int32Array;
}

export class Followed implements FollowedRays {
  left: Int32Array = new Int32Array(64);
  right: Int32Array = new Int32Array(64);
  isSparse = false;
  ray: Int32Array = new Int32Array(64);

  private reset({ rows }: Lattice, left: number, right: number): void {
    this.left = room(this.left, rows);
    this.right = room(this.right, rows);
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
    if (this.ray.length < rays) this.ray = new Int32Array(2 * rays);
    else this.ray.fill(0, 0, rays);
  }

  /** Follows the ray of the lattice in column x and row `low + y`, by its number there. */
  add(x: number, y: number, { left, columns }: Lattice): void {
    const ray = y * columns + x - left;
    this.ray[ray] = ray + 1;
    if (x < (this.left[y] as number)) this.left[y] = x;
    if (x > (this.right[y] as number)) this.right[y] = x;
  }
}

/** What is looked at in one go. */
export interface Sweep {
  readonly lattice: Lattice;
  readonly followed: FollowedRays;
}
