/** Where the rays of one lattice meet things. */

/** Hits in the order they were found; only the first `count` entries count. */
export class Hits {
  /** Number of the ray: row x columns + column. */
  ray = new Int32Array(4096);
  /** How far towards the light, metres. */
  ahead = new Float64Array(4096);
  thing = new Int32Array(4096);
  count = 0;

  /** There must be room. */
  add(ray: number, ahead: number, thing: number): void {
    const at = this.count++;
    this.ray[at] = ray;
    this.ahead[at] = ahead;
    this.thing[at] = thing;
  }

  /** Makes room for so many more. */
  reserve(more: number): void {
    if (this.count + more <= this.ray.length) return;
    const size = Math.max(2 * this.ray.length, this.count + more);
    const { ray, ahead, thing } = this;
    this.ray = new Int32Array(size);
    this.ahead = new Float64Array(size);
    this.thing = new Int32Array(size);
    this.ray.set(ray);
    this.ahead.set(ahead);
    this.thing.set(thing);
  }
}

/** Hits ray by ray, from the light down: those of ray k are entries start[k] to start[k + 1] (excluded). */
export interface SortedHits {
  readonly start: Int32Array;
  readonly ahead: Float64Array;
  readonly thing: Int32Array;
}

/** Sorts hits into arrays that are used again for the next lattice. */
export class HitSorter {
  private start = new Int32Array(1024);
  /** Where the hits of a ray that are in place end. */
  private end = new Int32Array(1024);
  private ahead = new Float64Array(4096);
  private thing = new Int32Array(4096);

  sort(hits: Hits, rays: number): SortedHits {
    if (this.start.length < rays + 1) {
      this.start = new Int32Array(2 * rays + 1);
      this.end = new Int32Array(2 * rays + 1);
    }
    if (this.ahead.length < hits.count) {
      this.ahead = new Float64Array(hits.ray.length);
      this.thing = new Int32Array(hits.ray.length);
    }
    this.countRays(hits, rays);
    this.place(hits);
    const { start, ahead, thing } = this;
    return { start, ahead, thing };
  }

  private countRays({ ray, count }: Hits, rays: number): void {
    const { start, end } = this;
    end.fill(0, 0, rays);
    for (let i = 0; i < count; i++) {
      const k = ray[i] as number;
      end[k] = (end[k] as number) + 1;
    }
    let sum = 0;
    for (let k = 0; k < rays; k++) {
      const here = end[k] as number;
      start[k] = sum;
      end[k] = sum;
      sum += here;
    }
    start[rays] = sum;
  }

  /** Puts each hit behind those of its ray that lie nearer the light. */
  private place(hits: Hits): void {
    const { start, end, ahead, thing } = this;
    const { ray, count } = hits;
    for (let i = 0; i < count; i++) {
      const k = ray[i] as number;
      const at = hits.ahead[i] as number;
      const from = start[k] as number;
      let to = end[k] as number;
      end[k] = to + 1;
      for (; to > from && (ahead[to - 1] as number) < at; to--) {
        ahead[to] = ahead[to - 1] as number;
        thing[to] = thing[to - 1] as number;
      }
      ahead[to] = at;
      thing[to] = hits.thing[i] as number;
    }
  }
}
