/** Light on receivers and groups of receivers, read from the ledger for any period and any set of kept owners. */
import type { CellLight } from './directions.ts';
import type { Exposure, KeepSet, Ledger, Wave } from './ledger.ts';
import { rayWeights, type WaveWeights } from './rayWeights.ts';

/** Receivers taken together: the exposure of a group is the weighted mean over its receivers. */
export interface Grouping {
  readonly count: number;
  /** Group of each receiver, 0 to count - 1; -1 leaves the receiver out. */
  readonly group: Int32Array;
  /** Weight of each receiver (leaf area, say); all 1 when left out. */
  readonly weight?: Float64Array;
}

/** Every receiver a group of its own. */
export const eachReceiver = (receiverCount: number): Grouping => ({
  count: receiverCount,
  group: Int32Array.from({ length: receiverCount }, (_, r) => r),
});

/** Share of light that each list of the wave lets through when only the kept owners stand. */
export function listShares({ listStart, listOwner, listShare }: Wave, keep?: KeepSet): Float64Array {
  const shares = new Float64Array(listStart.length - 1);
  for (let list = 0; list < shares.length; list++) {
    let share = 1;
    for (let i = listStart[list] as number; i < (listStart[list + 1] as number); i++) {
      if (keep === undefined || keep[listOwner[i] as number] === 1) share *= listShare[i] as number;
    }
    shares[list] = share;
  }
  return shares;
}

/** Weight of each receiver within its group; they add up to 1 in a group. */
export function normalWeights({ count, group, weight }: Grouping): Float64Array {
  const sums = new Float64Array(count);
  group.forEach((g, r) => {
    if (g >= count) throw new Error(`exposure: group of receiver ${r} must be below ${count}, got ${g}`);
    if (g >= 0) sums[g] = (sums[g] as number) + (weight?.[r] ?? 1);
  });
  return Float64Array.from(group, (g, r) => (g < 0 ? 0 : (weight?.[r] ?? 1) / (sums[g] as number) || 0));
}

interface WaveValues {
  readonly beam: Float64Array;
  readonly diffuse: Float64Array;
}

function waveValues(wave: Wave, weights: WaveWeights, grouping: Grouping, keep?: KeepSet): WaveValues {
  const { receiverCount, rayList, rayFixedShare, rayCosine } = wave;
  const { group, count } = grouping;
  const receiverWeight = normalWeights(grouping);
  const shares = listShares(wave, keep);
  const values = { beam: new Float64Array(count), diffuse: new Float64Array(count) };
  for (let d = 0; d < wave.directions.length; d++) {
    const weight = weights.weight[d] as number;
    if (weight === 0) continue;
    const into = weights.isBeam[d] === 1 ? values.beam : values.diffuse;
    for (let r = 0; r < receiverCount; r++) {
      const g = group[r] as number;
      if (g < 0) continue;
      const ray = d * receiverCount + r;
      const passed =
        (rayCosine[ray] as number) *
        (rayFixedShare[ray] as number) *
        (shares[rayList[ray] as number] as number);
      into[g] = (into[g] as number) + weight * passed * (receiverWeight[r] as number);
    }
  }
  return values;
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** Standard error of the mean of independent values; 0 for one value, whose spread is not known. */
function standardErrorOf(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const m = mean(values);
  const squares = values.reduce((sum, v) => sum + (v - m) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1) / values.length);
}

/** Throws on a grouping or keep-set that does not fit the ledger. */
export function checkSizes(ledger: Ledger, { group, weight }: Grouping, keep?: KeepSet): void {
  const { receiverCount, ownerCount, waves } = ledger;
  if (waves.length === 0) throw new Error('exposure: a ledger needs at least one wave, got none');
  if (group.length !== receiverCount || (weight !== undefined && weight.length !== receiverCount)) {
    throw new Error(
      `exposure: group and weight need one entry for each of ${receiverCount} receivers, got ${group.length}`,
    );
  }
  if (weight?.some((w) => !(w >= 0 && w < Infinity))) throw new Error('exposure: weights must be 0 or more');
  if (keep !== undefined && keep.length !== ownerCount) {
    throw new Error(`exposure: keep needs one entry for each of ${ownerCount} owners, got ${keep.length}`);
  }
}

/**
 * Exposure of each group, as share of what a level sensor under open sky gets in the same light. For leaves (receivers
 * with both sides) it is the light on both faces per one-sided area, and may pass 1; so may a tilted sensor. Light that
 * leaves let through is counted by their transmitted share, light from the ground by the ground cells; a group
 * without weight has exposure 0. Standard error: spread of the waves' values of the group, n - 1 in the denominator, over
 * the root of n; it is 0 for a single wave, which cannot tell.
 *
 * Dropped: light thrown back by walls, pot and wood; the ground's shade (ground cells have the brightness of open
 * ground).
 * @param keep which owners stand; all when left out
 */
export function exposure(
  ledger: Ledger,
  light: CellLight,
  grouping: Grouping = eachReceiver(ledger.receiverCount),
  keep?: KeepSet,
): readonly Exposure[] {
  checkSizes(ledger, grouping, keep);
  const weights = rayWeights(ledger, light);
  const values = ledger.waves.map((wave, w) => waveValues(wave, weights[w] as WaveWeights, grouping, keep));
  return Array.from({ length: grouping.count }, (_, g) => {
    const beam = values.map((v) => v.beam[g] as number);
    const diffuse = values.map((v) => v.diffuse[g] as number);
    const [beamShare, diffuseShare] = [mean(beam), mean(diffuse)];
    const standardError = standardErrorOf(beam.map((b, w) => b + (diffuse[w] as number)));
    return { share: beamShare + diffuseShare, standardError, beamShare, diffuseShare };
  });
}
