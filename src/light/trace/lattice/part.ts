/** Single rays of a lattice, as the smallest part of it that holds them all. */
import type { Lattice } from './lattice.ts';

export class RayList {
  /** Numbers of rays in the whole lattice, increasing once `close` was called; only the first `count` count. */
  ray: Int32Array = new Int32Array(64);
  count = 0;

  /** Adds rays, in any order and as often as they come. */
  add(rays: Int32Array, count: number): void {
    if (this.count + count > this.ray.length) {
      const larger = new Int32Array(2 * (this.count + count));
      larger.set(this.ray);
      this.ray = larger;
    }
    this.ray.set(rays.subarray(0, count), this.count);
    this.count += count;
  }

  /** Puts them in order, each once. */
  close(): void {
    const { ray } = this;
    ray.subarray(0, this.count).sort();
    let kept = 0;
    for (let k = 0; k < this.count; k++) {
      if (kept === 0 || ray[k] !== ray[kept - 1]) ray[kept++] = ray[k] as number;
    }
    this.count = kept;
  }

  /** The part of the lattice; without columns and rows when there is no ray. */
  partOf(lattice: Lattice): Lattice {
    const { ray, count } = this;
    const { columns } = lattice;
    if (count === 0) return { ...lattice, columns: 0, rows: 0 };
    const first = Math.floor((ray[0] as number) / columns);
    const last = Math.floor((ray[count - 1] as number) / columns);
    let [from, to] = [columns, -1];
    for (let k = 0; k < count; k++) {
      const column = (ray[k] as number) % columns;
      if (column < from) from = column;
      if (column > to) to = column;
    }
    return {
      ...lattice,
      left: lattice.left + from,
      low: lattice.low + first,
      columns: to - from + 1,
      rows: last - first + 1,
    };
  }
}

/** Numbers of the rays of one part of a lattice in another; -1 for those outside. */
export function rayNumbers(of: Omit<Lattice, 'frame'>, within: Lattice): (ray: number) => number {
  const [shift, lift] = [of.left - within.left, of.low - within.low];
  return (ray) => {
    const y = Math.floor(ray / of.columns);
    const [column, row] = [ray - y * of.columns + shift, y + lift];
    const isOutside = row < 0 || row >= within.rows || column < 0 || column >= within.columns;
    return isOutside ? -1 : row * within.columns + column;
  };
}
