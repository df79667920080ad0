/** Sorted hits boiled down to what the light on leaves needs, direction by direction. */
import type { LeafWave } from '../../leafLedger.ts';
import type { SortedHits } from './hits.ts';
import type { LatticeScene } from './scene.ts';

/** What happens to the ray at a thing of some kind. */
export const passes = 0;
export const gathers = 1;
/** Something fixed and opaque ends the ray; what lies behind is dark whatever is kept. */
export const ends = 2;

/** Per thing: `gathers` and `ends` added up. */
export function fateOf({ kind, kindGroup, kindOwner, kindShare }: LatticeScene): Uint8Array {
  const ofKind = kindGroup.map(
    (group, k) =>
      (group >= 0 ? gathers : passes) + (kindOwner[k] === 0 && kindShare[k] === 0 ? ends : passes),
  );
  const fate = new Uint8Array(kind.length);
  for (let thing = 0; thing < kind.length; thing++) fate[thing] = ofKind[kind[thing] as number] as number;
  return fate;
}

/** Room for so many entries, with what was there. */
function grown(entries: Int32Array, count: number, needed: number): Int32Array {
  if (needed <= entries.length) return entries;
  const larger = new Int32Array(Math.max(Math.ceil(1.5 * entries.length), Math.ceil(needed)));
  larger.set(entries.subarray(0, count));
  return larger;
}

/** Hits so far, run by run: those of one ray. Only the first `count` hits and `runs` rays count. See `LeafWave` for the shapes. */
export class Collected {
  hit: Int32Array = new Int32Array(1 << 12);
  share: Float32Array | null;
  count = 0;
  ray: Int32Array = new Int32Array(1 << 11);
  runs = 0;

  constructor(hasClouds: boolean) {
    this.share = hasClouds ? new Float32Array(1 << 12) : null;
  }

  empty(): void {
    this.count = 0;
    this.runs = 0;
  }

  /** Makes room for so many more hits, in as many runs at most. */
  reserve(more: number, moreRuns: number): void {
    this.ray = grown(this.ray, this.runs, this.runs + moreRuns);
    const { hit, share } = this;
    this.hit = grown(hit, this.count, this.count + more);
    if (share === null || this.hit.length === hit.length) return;
    this.share = new Float32Array(this.hit.length);
    this.share.set(share.subarray(0, this.count));
  }

  /** Adds all of another. */
  append({ hit, share, count, ray, runs }: Collected): void {
    this.reserve(count, runs);
    this.hit.set(hit.subarray(0, count), this.count);
    this.ray.set(ray.subarray(0, runs), this.runs);
    if (this.share !== null && share !== null) this.share.set(share.subarray(0, count), this.count);
    this.count += count;
    this.runs += runs;
  }

  /** Adds a run of another as that of a ray, its hits from `from` on; returns where they end. There must be room. */
  appendRun(other: Collected, from: number, ray: number): number {
    this.ray[this.runs++] = ray;
    let k = from;
    do {
      const at = this.count++;
      this.hit[at] = other.hit[k] as number;
      if (this.share !== null && other.share !== null) this.share[at] = other.share[k] as number;
      k++;
    } while (k < other.count && (other.hit[k] as number) >= 0);
    return k;
  }

  /** The arrays themselves, as far as they are filled. */
  filled(): Pick<LeafWave, 'hitKind' | 'hitShare' | 'runRay'> {
    const { hit, share, count, ray, runs } = this;
    return {
      hitKind: hit.subarray(0, count),
      hitShare: share === null ? null : share.subarray(0, count),
      runRay: ray.subarray(0, runs),
    };
  }

  /** Copies, cut to length. */
  cut(): Pick<LeafWave, 'hitKind' | 'hitShare' | 'runRay'> {
    const { hit, share, count, ray, runs } = this;
    return {
      hitKind: hit.slice(0, count),
      hitShare: share === null ? null : share.slice(0, count),
      runRay: ray.slice(0, runs),
    };
  }
}

/**
 * Adds the rays of a sweep, each down to its last leaf.
 * @param cloudShare an entry per sorted hit
 */
export function collect(
  { kind }: LatticeScene,
  fate: Uint8Array,
  { start, thing }: SortedHits,
  rayCount: number,
  cloudShare: Float64Array | null,
  into: Collected,
): void {
  const hits = start[rayCount] as number;
  into.reserve(hits, Math.min(hits, rayCount));
  const { hit, share } = into;
  let count = into.count;
  for (let ray = 0; ray < rayCount; ray++) {
    const end = start[ray + 1] as number;
    const first = count;
    let to = count;
    for (let k = start[ray] as number; k < end; k++) {
      const it = thing[k] as number;
      const what = fate[it] as number;
      if (what === ends) break;
      const code = kind[it] as number;
      hit[to] = to === first ? ~code : code;
      if (share !== null && cloudShare !== null) share[to] = cloudShare[k] as number;
      to++;
      if (what !== passes) count = to;
      if (what > ends) break;
    }
    if (count > first) into.ray[into.runs++] = ray;
  }
  into.count = count;
}
