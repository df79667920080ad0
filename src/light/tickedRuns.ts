/** Putting the light on leaves right where an owner comes or goes: the contract of both ways, and the plain one. */
import type { LeafWave } from './leafLedger.ts';
import type { ShadedRuns } from './shadedRuns.ts';

/** One wave's matrix, and how it changes. */
export interface TickedRuns {
  /** As in `LeafTable`. */
  readonly passed: Float64Array;
  /**
   * Puts the rays right on which an owner shades leaves.
   * @param before share that each kind let through when the matrix was right, and now
   */
  readonly change: (owner: number, before: Float64Array, now: Float64Array) => void;
}

/** @param passed the matrix as it is, which may be used up */
export type MakeTickedRuns = (wave: LeafWave, runs: ShadedRuns, passed: Float64Array) => TickedRuns;

/** Per kind: what a hit adds to its group for a share of 1; nothing where it gathers no light. */
export const gainPerHit = ({ groupAreaM2, rayAreaM2, kindGroup }: LeafWave): Float64Array =>
  Float64Array.from(kindGroup, (group) => (group < 0 ? 0 : rayAreaM2 / (groupAreaM2[group] as number)));

/** In TypeScript alone. */
export const plainTickedRuns: MakeTickedRuns = (wave, runs, passed) => {
  const { groupCount, kindGroup } = wave;
  const { code, share, end, row, stretchStart } = runs;
  const [perHit, groupOf] = [gainPerHit(wave), kindGroup.map((group) => Math.max(0, group))];
  const changeStretch = (stretch: number, before: Float64Array, now: Float64Array): void => {
    const [last, rowStart] = [end[stretch] as number, (row[stretch] as number) * groupCount];
    let [was, is] = [1, 1];
    for (let k = end[stretch - 1] ?? 0; k < last; k++) {
      let kind = code[k] as number;
      if (kind < 0) {
        kind = ~kind;
        was = 1;
        is = 1;
      }
      // What gathers no light gains nothing, which is quicker than to ask.
      const at = rowStart + (groupOf[kind] as number);
      const gained = share === null ? is - was : (is - was) * (share[k] as number);
      passed[at] = (passed[at] as number) + gained * (perHit[kind] as number);
      was *= before[kind] as number;
      is *= now[kind] as number;
    }
  };
  return {
    passed,
    change: (owner, before, now) => {
      const last = stretchStart[owner + 1] as number;
      for (let s = stretchStart[owner] as number; s < last; s++) changeStretch(s, before, now);
    },
  };
};
