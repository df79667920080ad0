// The twin of `src/light/tickedRuns.ts`: the same arithmetic in the same order, in double precision. Lane 0 is the light before a tick,
// lane 1 the light now. AssemblyScript, not TypeScript.

import { take } from './memory';

/** Per kind 32 bytes: shares let through before and now, what a hit adds to its group (0 for none), where in a row (4 bytes). */
export let tickKindAt: usize = 0;
/** Hits of the shaded runs, 2 bytes each. */
export let tickCodeAt: usize = 0;
/** Per stretch: address of its row less that of the matrix, and where its hits end. 4 bytes each. */
export let tickRowAt: usize = 0;
export let tickEndAt: usize = 0;
/** The matrix. */
export let tickPassedAt: usize = 0;

export function setUpTicks(kinds: i32, hits: i32, stretches: i32, entries: i32): void {
  tickKindAt = take(32 * kinds);
  tickCodeAt = take(2 * hits);
  tickRowAt = take(4 * stretches);
  tickEndAt = take(4 * stretches);
  tickPassedAt = take(8 * entries);
}

/** Puts the light of stretches `first` to `last` (excluded) right; the hits of the first begin at `from`. */
export function changeStretches(first: i32, last: i32, from: i32): void {
  const all = f64x2.splat(1);
  let hit = tickCodeAt + ((<usize>from) << 1);
  for (let stretch = first; stretch < last; stretch++) {
    const at = (<usize>stretch) << 2;
    const row = tickPassedAt + <usize>load<i32>(tickRowAt + at);
    const end = tickCodeAt + ((<usize>load<i32>(tickEndAt + at)) << 1);
    let passed = all;
    for (; hit < end; hit += 2) {
      const code = <i32>load<i16>(hit);
      // All bits where a run begins, else none.
      const begins = code >> 31;
      passed = v128.bitselect(all, passed, i32x4.splat(begins));
      const kind = tickKindAt + ((<usize>(code ^ begins)) << 5);
      const group = row + <usize>load<i32>(kind, 24);
      const gained = f64x2.extract_lane(passed, 1) - f64x2.extract_lane(passed, 0);
      store<f64>(group, load<f64>(group) + gained * load<f64>(kind, 16));
      passed = f64x2.mul(passed, v128.load(kind));
    }
  }
}
