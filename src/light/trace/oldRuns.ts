/** The rays of a traced wave that a change of the scene leaves as they were. */
import type { LeafWave } from '../leafLedger.ts';
import type { Collected } from './lattice/collect.ts';
import type { Lattice } from './lattice/lattice.ts';
import { type RayList, rayNumbers } from './lattice/part.ts';

interface Place {
  readonly direction: number;
  readonly lattice: Lattice;
  /** Rays that were followed again. */
  readonly rays: RayList;
}

/** Goes through the rays that were followed again. */
class FreshRuns {
  /** The next of them. */
  next = Infinity;
  private readonly rays: RayList;
  private readonly fresh: Collected;
  private readonly into: Collected;
  private at = 0;
  private run = 0;
  private hit = 0;

  constructor(rays: RayList, fresh: Collected, into: Collected) {
    this.rays = rays;
    this.fresh = fresh;
    this.into = into;
    this.look();
  }

  private look(): void {
    this.next = this.at < this.rays.count ? (this.rays.ray[this.at] as number) : Infinity;
  }

  /** Adds what was found on all rays up to one; whether that one is among them. */
  addUpTo(ray: number): boolean {
    let isAmong = false;
    while (this.next <= ray) {
      const { fresh, next } = this;
      isAmong = next === ray;
      if (this.run < fresh.runs && fresh.ray[this.run] === next) {
        this.hit = this.into.appendRun(fresh, this.run++, this.hit);
      }
      this.at++;
      this.look();
    }
    return isAmong;
  }
}

export class OldRuns {
  private readonly wave: LeafWave;
  /** New code of the code k of a hit, at k + number of kinds. */
  private readonly codeAfter: Int32Array;
  /** New numbers of a direction's rays. */
  private ray: Int32Array = new Int32Array(1024);

  /** @param kindAfter new number of each kind of the wave */
  constructor(wave: LeafWave, kindAfter: Int32Array) {
    this.wave = wave;
    const kinds = kindAfter.length;
    this.codeAfter = Int32Array.from({ length: 2 * kinds }, (_, at) => {
      const code = at - kinds;
      return code < 0 ? ~(kindAfter[~code] as number) : (kindAfter[code] as number);
    });
  }

  /** Adds the runs of a direction in the order of their rays: the fresh ones, and the old ones of all other rays. */
  mergeWith(fresh: Collected, { direction, lattice, rays }: Place, into: Collected): void {
    const { hitKind, hitShare, hitStart } = this.wave;
    const { codeAfter } = this;
    const [end, kinds] = [hitStart[direction + 1] as number, codeAfter.length / 2];
    const first = hitStart[direction] as number;
    const newRay = this.number(direction, lattice);
    into.reserve(fresh.count + end - first, fresh.runs + newRay.length);
    const freshRuns = new FreshRuns(rays, fresh, into);
    const { hit, ray, share } = into;
    let [run, k] = [0, first];
    while (k < end) {
      const here = newRay[run++] as number;
      const isDropped = here < 0 || (here >= freshRuns.next && freshRuns.addUpTo(here));
      if (isDropped) {
        for (k++; k < end && (hitKind[k] as number) >= 0; ) k++;
        continue;
      }
      ray[into.runs++] = here;
      const [from, start] = [k, into.count];
      let at = start;
      hit[at++] = codeAfter[(hitKind[k++] as number) + kinds] as number;
      for (; k < end; k++) {
        const code = hitKind[k] as number;
        if (code < 0) break;
        hit[at++] = codeAfter[code + kinds] as number;
      }
      into.count = at;
      if (share !== null && hitShare !== null) share.set(hitShare.subarray(from, k), start);
    }
    freshRuns.addUpTo(Number.MAX_SAFE_INTEGER);
  }

  /** Numbers of the direction's rays in the new lattice, -1 for those outside; good until the next call. */
  private number(direction: number, lattice: Lattice): Int32Array {
    const { runRay, runStart, window } = this.wave;
    const old = runRay.subarray(runStart[direction], runStart[direction + 1]);
    const at = 4 * direction;
    const [left, low] = [window[at] as number, window[at + 1] as number];
    const [columns, rows] = [window[at + 2] as number, window[at + 3] as number];
    const isSame = left === lattice.left && low === lattice.low && columns === lattice.columns;
    if (isSame && rows === lattice.rows) return old;
    if (this.ray.length < old.length) this.ray = new Int32Array(2 * old.length);
    const numberOf = rayNumbers({ ...lattice, left, low, columns, rows }, lattice);
    for (let run = 0; run < old.length; run++) this.ray[run] = numberOf(old[run] as number);
    return this.ray.subarray(0, old.length);
  }
}
