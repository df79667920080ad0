/** Small things the sample trees are made with. */
import { hashText, random01, randomNormal } from '../../src/geometry/random.ts';
import type { Bud } from '../../src/geometry/tree.ts';

/** Buds in a spiral from `fromM` to the tip. */
export function spiralBuds(
  axisId: string,
  atM: readonly number[],
  firstAroundDeg: number,
  divergenceDeg: number,
  seed: number,
): Bud[] {
  return atM.map((at, i) => ({
    id: `${axisId}-b${i + 1}`,
    atM: Math.round(at * 1e4) / 1e4,
    aroundDeg:
      Math.round(
        10 *
          ((firstAroundDeg + i * divergenceDeg + 6 * randomNormal(seed, hashText(axisId), i) + 3600) % 360),
      ) / 10,
    pin: null,
  }));
}

/** A figure spread evenly from `from` to `to` by chance. */
export const between = (from: number, to: number, seed: number, ...words: number[]): number =>
  from + (to - from) * random01(seed, ...words);
