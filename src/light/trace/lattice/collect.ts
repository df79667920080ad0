/** Sorted hits boiled down to what the light on leaves needs, direction by direction. */
import type { SortedHits } from './hits.ts';
import type { LatticeScene } from './scene.ts';

/** What happens to the ray at a thing of some kind. */
export const passes = 0;
export const gathers = 1;
/** Something fixed and opaque ends the ray; what lies behind is dark whatever is kept. */
export const ends = 2;

/** Per thing: `gathers` and `ends` added up. */
export function fateOf({ kind, kindGroup, kindOwner, kindShare }: LatticeScene): Uint8Array {
  return Uint8Array.from(kind, (k) => {
    const gathering = (kindGroup[k] as number) >= 0 ? gathers : passes;
    return gathering + (kindOwner[k] === 0 && kindShare[k] === 0 ? ends : passes);
  });
}

/** Hits of all directions so far; only the first `count` entries count. See `LeafWave` for the shapes. */
export class Collected {
  hit = new Int32Array(1 << 16);
  share: Float32Array | null;
  count = 0;

  constructor(hasClouds: boolean) {
    this.share = hasClouds ? new Float32Array(1 << 16) : null;
  }

  reserve(more: number): void {
    if (this.count + more <= this.hit.length) return;
    const size = Math.max(Math.ceil(1.5 * this.hit.length), this.count + more);
    const { hit, share } = this;
    this.hit = new Int32Array(size);
    this.hit.set(hit);
    if (share === null) return;
    this.share = new Float32Array(size);
    this.share.set(share);
  }
}

/** Adds the rays of one lattice, each down to its last leaf. `cloudShare` has an entry per sorted hit. */
export function collect(
  { kind }: LatticeScene,
  fate: Uint8Array,
  { start, thing }: SortedHits,
  rayCount: number,
  cloudShare: Float64Array | null,
  into: Collected,
): void {
  into.reserve(start[rayCount] as number);
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
  }
  into.count = count;
}
