/** The light on groups of receivers, direction by direction: asked of any light it answers without looking at a ray. */
import type { CellLight, Direction } from './directions.ts';
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

export interface TableWave {
  readonly directions: readonly Direction[];
  /**
   * Entry d * groupCount + g: cosine times the share that things let through along direction d, mean over the receivers of
   * group g. 8 bytes.
   */
  readonly passed: Float64Array;
}

/** One matrix a wave, for one grouping and one set of kept owners. */
export interface NodeTable {
  readonly groupCount: number;
  readonly waves: readonly TableWave[];
}

/** Product over the veils of each list. */
function products({ listStart, listVeil }: Wave, veilShares: Float64Array): Float64Array {
  const shares = new Float64Array(listStart.length - 1);
  for (let list = 0; list < shares.length; list++) {
    let share = 1;
    const end = listStart[list + 1] as number;
    for (let i = listStart[list] as number; i < end; i++)
      share *= veilShares[listVeil[i] as number] as number;
    shares[list] = share;
  }
  return shares;
}

/** Share of light that each list of the wave lets through when only the kept owners stand. */
export const listShares = (wave: Wave, keep?: KeepSet): Float64Array =>
  products(
    wave,
    Float64Array.from(wave.veilShare, (share, veil) => {
      const owner = wave.veilOwner[veil] as number;
      return owner === 0 || keep === undefined || keep[owner] === 1 ? share : 1;
    }),
  );

/** Share that what is fixed alone lets through. */
export const fixedShares = (wave: Wave): Float64Array =>
  products(
    wave,
    Float64Array.from(wave.veilShare, (share, veil) => (wave.veilOwner[veil] === 0 ? share : 1)),
  );

/** Weight of each receiver within its group; they add up to 1 in a group. */
function normalWeights({ count, group, weight }: Grouping): Float64Array {
  const sums = new Float64Array(count);
  group.forEach((g, r) => {
    if (g >= count) throw new Error(`exposure: group of receiver ${r} must be below ${count}, got ${g}`);
    if (g >= 0) sums[g] = (sums[g] as number) + (weight?.[r] ?? 1);
  });
  return Float64Array.from(group, (g, r) => (g < 0 ? 0 : (weight?.[r] ?? 1) / (sums[g] as number) || 0));
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

/** A row of the table, one entry a group, made when it is asked for; good until the next is. */
export type RowOf = (direction: number) => Float64Array;

/** Rows of a matrix that is there. */
export const rowReader =
  (matrix: Float64Array, groupCount: number): RowOf =>
  (d) =>
    matrix.subarray(d * groupCount, (d + 1) * groupCount);

/** @param shares what each list of the wave lets through */
export function rowMaker(wave: Wave, grouping: Grouping, shares: Float64Array): RowOf {
  const { receiverCount, rayList, rayCloudShare, receiverStance, stanceCosine } = wave;
  const { group, count } = grouping;
  const stances = stanceCosine.length / wave.directions.length;
  const receiverWeight = normalWeights(grouping);
  const row = new Float64Array(count);
  return (direction) => {
    row.fill(0);
    const cosines = stanceCosine.subarray(direction * stances, (direction + 1) * stances);
    for (let r = 0, ray = direction * receiverCount; r < receiverCount; r++, ray++) {
      const g = group[r] as number;
      if (g < 0) continue;
      const share = shares[rayList[ray] as number] as number;
      const clouds = rayCloudShare === null ? 1 : (rayCloudShare[ray] as number);
      const passed = (cosines[receiverStance[r] as number] as number) * clouds * share;
      row[g] = (row[g] as number) + passed * (receiverWeight[r] as number);
    }
    return row;
  };
}

/**
 * Looks at every ray of the ledger once. Throws on a grouping or keep-set that does not fit it.
 * @param keep which owners stand; all when left out
 */
export function nodeTable(
  ledger: Ledger,
  grouping: Grouping = eachReceiver(ledger.receiverCount),
  keep?: KeepSet,
): NodeTable {
  checkSizes(ledger, grouping, keep);
  const groupCount = grouping.count;
  const waves = ledger.waves.map((wave): TableWave => {
    const { directions } = wave;
    const rowOf = rowMaker(wave, grouping, listShares(wave, keep));
    const passed = new Float64Array(directions.length * groupCount);
    for (let d = 0; d < directions.length; d++) passed.set(rowOf(d), d * groupCount);
    return { directions, passed };
  });
  return { groupCount, waves };
}

/** Light of one wave on each group. */
export interface WaveLight {
  readonly beam: Float64Array;
  readonly diffuse: Float64Array;
}

/** Rows of directions without light are not asked for. */
export function waveLight({ weight, isBeam }: WaveWeights, groupCount: number, rowOf: RowOf): WaveLight {
  const light = { beam: new Float64Array(groupCount), diffuse: new Float64Array(groupCount) };
  for (let d = 0; d < weight.length; d++) {
    const w = weight[d] as number;
    if (w === 0) continue;
    const into = isBeam[d] === 1 ? light.beam : light.diffuse;
    const row = rowOf(d);
    for (let g = 0; g < groupCount; g++) into[g] = (into[g] as number) + w * (row[g] as number);
  }
  return light;
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** Standard error of the mean of independent values; 0 for one value, whose spread is not known. */
export function standardErrorOf(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const m = mean(values);
  const squares = values.reduce((sum, v) => sum + (v - m) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1) / values.length);
}

/** Mean over the waves, and their spread as its error. */
export function exposureOfWaves(waves: readonly WaveLight[], groupCount: number): readonly Exposure[] {
  return Array.from({ length: groupCount }, (_, g) => {
    const beam = waves.map((v) => v.beam[g] as number);
    const diffuse = waves.map((v) => v.diffuse[g] as number);
    const [beamShare, diffuseShare] = [mean(beam), mean(diffuse)];
    const standardError = standardErrorOf(beam.map((b, w) => b + (diffuse[w] as number)));
    return { share: beamShare + diffuseShare, standardError, beamShare, diffuseShare };
  });
}

/** As `exposure` of the ledger, grouping and keep-set that the table was made of. */
export function exposureOf({ groupCount, waves }: NodeTable, light: CellLight): readonly Exposure[] {
  const weights = rayWeights({ waves }, light);
  const lights = waves.map(({ passed }, w) =>
    waveLight(weights[w] as WaveWeights, groupCount, rowReader(passed, groupCount)),
  );
  return exposureOfWaves(lights, groupCount);
}
