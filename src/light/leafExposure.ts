/** Light on groups of leaves, read from the leaf ledger for any period and any set of kept owners. */
import type { CellKind, CellLight } from './directions.ts';
import type { LeafLedger, LeafWave } from './leafLedger.ts';
import type { Exposure, KeepSet } from './ledger.ts';
import { rayWeights, type WaveWeights } from './rayWeights.ts';

/** Share of light that each kind of thing lets through; all of it where its owner is gone. */
export function kindShares({ kindOwner, kindShare }: LeafWave, keep?: KeepSet): Float64Array {
  return Float64Array.from(kindOwner, (owner, kind) =>
    keep === undefined || owner === 0 || keep[owner] === 1 ? (kindShare[kind] as number) : 1,
  );
}

/** Adds up in `into`, per group, the shares of light that reach the hits of one direction. */
function sumShares(wave: LeafWave, shares: Float64Array, direction: number, into: Float64Array): void {
  const { hitKind, hitShare, hitStart, kindGroup } = wave;
  const end = hitStart[direction + 1] as number;
  let passed = 1;
  for (let k = hitStart[direction] as number; k < end; k++) {
    let kind = hitKind[k] as number;
    if (kind < 0) {
      kind = ~kind;
      passed = 1;
    }
    const group = kindGroup[kind] as number;
    if (group >= 0) {
      const reached = hitShare === null ? passed : passed * (hitShare[k] as number);
      into[group] = (into[group] as number) + reached;
    }
    passed *= shares[kind] as number;
  }
}

/** Rays on leaves: samples of the light there. */
export function leafHits({ hitKind, kindGroup }: LeafWave): number {
  let count = 0;
  for (const kind of hitKind) if ((kindGroup[kind < 0 ? ~kind : kind] as number) >= 0) count++;
  return count;
}

/** A direction of a wave that carries light, and what a level sensor in the open gets by it. */
interface Ray {
  readonly wave: number;
  readonly direction: number;
  readonly weight: number;
  readonly open: number;
}

/** The rays of each cell that carries light. */
function raysByCell({ waves }: LeafLedger, weights: readonly WaveWeights[], isBeam: boolean): Ray[][] {
  const cells = new Map<string, Ray[]>();
  waves.forEach(({ directions }, wave) => {
    const { weight } = weights[wave] as WaveWeights;
    directions.forEach(({ toSky, kind, cell }, direction) => {
      const w = weight[direction] as number;
      if (w === 0 || isBeam !== (kind === 'beam')) return;
      const key = `${kind satisfies CellKind} ${cell}`;
      const ray = { wave, direction, weight: w, open: kind === 'ground' ? 0 : w * Math.max(0, toSky[1]) };
      const known = cells.get(key);
      if (known === undefined) cells.set(key, [ray]);
      else known.push(ray);
    });
  });
  return [...cells.values()];
}

/** Sums over the cells of one part of the light; per group unless said. */
class Part {
  /** Of the values, over all waves. */
  readonly sum: Float64Array;
  /** Of the squares of the values within their cells, and of the values times the open values. */
  readonly squares: Float64Array;
  readonly products: Float64Array;
  /** Of the open values: sum, and sum of squares within the cells; one number for all groups. */
  open = 0;
  openSquares = 0;

  constructor(groupCount: number) {
    this.sum = new Float64Array(groupCount);
    this.squares = new Float64Array(groupCount);
    this.products = new Float64Array(groupCount);
  }

  addCell(rays: readonly Ray[], values: readonly Float64Array[], waveCount: number): void {
    const open = rays.reduce((sum, ray) => sum + ray.open, 0);
    this.open += open;
    this.openSquares += rays.reduce((sum, ray) => sum + ray.open ** 2, 0) - open ** 2 / waveCount;
    for (let g = 0; g < this.sum.length; g++) {
      let [sum, squares, products] = [0, 0, 0];
      for (let k = 0; k < rays.length; k++) {
        const value = (values[k] as Float64Array)[g] as number;
        sum += value;
        squares += value * value;
        products += value * (rays[k] as Ray).open;
      }
      this.sum[g] = (this.sum[g] as number) + sum;
      this.squares[g] = (this.squares[g] as number) + squares - (sum * sum) / waveCount;
      this.products[g] = (this.products[g] as number) + products - (sum * open) / waveCount;
    }
  }

  /** Variance of the mean over the waves of a group's value. */
  variance(g: number, waveCount: number): number {
    if (waveCount < 2) return 0;
    const ratio = this.open > 0 ? (this.sum[g] as number) / this.open : 0;
    const within =
      (this.squares[g] as number) - 2 * ratio * (this.products[g] as number) + ratio ** 2 * this.openSquares;
    return Math.max(0, within) / (waveCount - 1) / waveCount;
  }
}

function partOf(ledger: LeafLedger, weights: readonly WaveWeights[], isBeam: boolean, keep?: KeepSet): Part {
  const { waves, groupCount } = ledger;
  const part = new Part(groupCount);
  const shares = waves.map((wave) => kindShares(wave, keep));
  const values = waves.map(() => new Float64Array(groupCount));
  for (const rays of raysByCell(ledger, weights, isBeam)) {
    rays.forEach(({ wave: w, direction, weight }, k) => {
      const [wave, value] = [waves[w] as LeafWave, values[k] as Float64Array];
      value.fill(0);
      sumShares(wave, shares[w] as Float64Array, direction, value);
      const scale = weight * wave.rayAreaM2;
      for (let g = 0; g < groupCount; g++) {
        value[g] = ((value[g] as number) * scale) / (wave.groupAreaM2[g] as number) || 0;
      }
    });
    part.addCell(rays, values, waves.length);
  }
  return part;
}

/** Throws on an empty ledger and on a keep-set that does not fit it. */
export function checkLeaves({ waves, ownerCount }: LeafLedger, keep?: KeepSet): void {
  if (waves.length === 0) throw new Error('leafExposure: a ledger needs at least one wave, got none');
  if (keep !== undefined && keep.length !== ownerCount) {
    throw new Error(
      `leafExposure: keep needs one entry for each of ${ownerCount} owners, got ${keep.length}`,
    );
  }
}

/**
 * Light on both faces of each group's leaves per one-sided leaf area, as share of what a level sensor under open sky
 * gets in the same light; it may pass 1. Light that leaves let through and light from the ground are counted as in
 * `exposure`; a group without leaves has 0.
 *
 * Standard error: rays of different cells and waves are independent, each lattice being placed anew, so the variance of the
 * mean over W waves is the sum over cells of the variance within the cell over the waves, over W. Values are taken less
 * their part of the open sky's sample, since each wave is scaled to the open sky's closed sum (ratio estimator, Cochran 1977,
 * Sampling Techniques, section 6.3). It is 0 for a single wave, which cannot tell.
 * @param keep which owners stand; all when left out
 */
export function leafExposure(ledger: LeafLedger, light: CellLight, keep?: KeepSet): readonly Exposure[] {
  checkLeaves(ledger, keep);
  const weights = rayWeights(ledger, light);
  const [beam, diffuse] = [partOf(ledger, weights, true, keep), partOf(ledger, weights, false, keep)];
  const count = ledger.waves.length;
  return Array.from({ length: ledger.groupCount }, (_, g) => {
    const beamShare = (beam.sum[g] as number) / count;
    const diffuseShare = (diffuse.sum[g] as number) / count;
    const standardError = Math.sqrt(beam.variance(g, count) + diffuse.variance(g, count));
    return { share: beamShare + diffuseShare, standardError, beamShare, diffuseShare };
  });
}
