/** Single rays of a lattice, as the smallest part of it that holds them all. */
import type { Lattice } from './lattice.ts';
import { Followed, type Sweep } from './sweep.ts';

/** Rays of a lattice that are to be followed again. */
export class RayList {
  /** Numbers of rays in the whole lattice, increasing and each once after `close`; only the first `count` count. */
  ray: Int32Array = new Int32Array(64);
  /** Their numbers in the part that is swept. */
  inPart: Int32Array = new Int32Array(64);
  count = 0;
  private readonly followed = new Followed();
  private part: Lattice | null = null;

  empty(): void {
    this.count = 0;
  }

  /** Adds rays, in any order and as often as they come. */
  add(rays: Int32Array, count: number): void {
    if (this.count + count > this.ray.length) {
      const larger = new Int32Array(2 * (this.count + count));
      larger.set(this.ray);
      this.ray = larger;
      this.inPart = new Int32Array(larger.length);
    }
    for (let k = 0; k < count; k++) this.ray[this.count++] = rays[k] as number;
  }

  /** Puts them in order, each once, by their places in the smallest part of the lattice that holds them all. */
  close(lattice: Lattice): void {
    this.part = this.count === 0 ? null : this.partOf(lattice);
    if (this.part === null) return;
    this.follow(lattice, this.part);
    this.list(lattice, this.part);
  }

  private follow(lattice: Lattice, part: Lattice): void {
    const { ray, followed, count } = this;
    const lift = lattice.low - part.low;
    followed.setNone(part);
    for (let k = 0; k < count; k++) {
      const row = Math.floor((ray[k] as number) / lattice.columns);
      followed.add(lattice.left + (ray[k] as number) - row * lattice.columns, row + lift, part);
    }
  }

  private list(lattice: Lattice, part: Lattice): void {
    const { ray, inPart, followed } = this;
    this.count = 0;
    for (let y = 0; y < part.rows; y++) {
      const ofPart = y * part.columns - part.left;
      const ofWhole = (y + part.low - lattice.low) * lattice.columns - lattice.left;
      for (let x = followed.left[y] as number; x <= (followed.right[y] as number); x++) {
        if (followed.ray[ofPart + x] === 0) continue;
        inPart[this.count] = ofPart + x;
        ray[this.count++] = ofWhole + x;
      }
    }
  }

  /** What is to be swept; null where there is no ray. Good until the next `close`. */
  get sweep(): Sweep | null {
    return this.part === null ? null : { lattice: this.part, followed: this.followed };
  }

  private partOf(lattice: Lattice): Lattice {
    const { ray, count } = this;
    const { columns } = lattice;
    let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let k = 0; k < count; k++) {
      const row = Math.floor((ray[k] as number) / columns);
      const column = (ray[k] as number) - row * columns;
      if (column < left) left = column;
      if (column > right) right = column;
      if (row < low) low = row;
      if (row > high) high = row;
    }
    return {
      ...lattice,
      left: lattice.left + left,
      low: lattice.low + low,
      columns: right - left + 1,
      rows: high - low + 1,
    };
  }
}
