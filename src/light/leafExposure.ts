/** Light on groups of leaves, read from the leaf ledger for any period and any set of kept owners. */
import type { CellLight, Direction } from './directions.ts';
import { type LeafLedger, type LeafWave, weighedDirections } from './leafLedger.ts';
import { checkLeaves, type LeafTable, leafRowMaker } from './leafTable.ts';
import type { Exposure, KeepSet } from './ledger.ts';
import { type RowOf, rowReader } from './nodeTable.ts';
import { rayWeights, type WaveWeights } from './rayWeights.ts';

/** Rays on leaves: samples of the light there. */
export function leafHits({ hitKind, kindGroup }: LeafWave): number {
  let count = 0;
  for (let k = 0; k < hitKind.length; k++) {
    const kind = hitKind[k] as number;
    if ((kindGroup[kind < 0 ? ~kind : kind] as number) >= 0) count++;
  }
  return count;
}

/** A wave and what of it the light on each group is made of. */
interface RowWave {
  readonly directions: readonly Direction[];
  readonly rowOf: RowOf;
}

/** A direction of a wave that carries light, and what a level sensor in the open gets by it. */
interface Ray {
  readonly wave: number;
  readonly direction: number;
  readonly weight: number;
  readonly open: number;
}

/** The rays of each cell that carries light; cells have numbers of their own within a kind. */
function raysByCell(waves: readonly RowWave[], weights: readonly WaveWeights[], isBeam: boolean): Ray[][] {
  const cells: Record<Direction['kind'], Ray[][]> = { sky: [], beam: [], ground: [] };
  waves.forEach(({ directions }, wave) => {
    const { weight, open } = weights[wave] as WaveWeights;
    directions.forEach(({ kind, cell }, direction) => {
      const ray = { wave, direction, weight: weight[direction] as number, open: open[direction] as number };
      if ((ray.weight === 0 && ray.open === 0) || isBeam !== (kind === 'beam')) return;
      const known = cells[kind][cell];
      if (known === undefined) cells[kind][cell] = [ray];
      else known.push(ray);
    });
  });
  return [...cells.sky, ...cells.beam, ...cells.ground].filter((rays) => rays !== undefined);
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
  /** The same of one cell. */
  private readonly cellSum: Float64Array;
  private readonly cellSquares: Float64Array;
  private readonly cellProducts: Float64Array;
  /** Of the rays of one cell and wave, where there are several: the ground's, zone by zone. */
  private readonly bundle: Float64Array;

  constructor(groupCount: number) {
    this.sum = new Float64Array(groupCount);
    this.squares = new Float64Array(groupCount);
    this.products = new Float64Array(groupCount);
    this.cellSum = new Float64Array(groupCount);
    this.cellSquares = new Float64Array(groupCount);
    this.cellProducts = new Float64Array(groupCount);
    this.bundle = new Float64Array(groupCount);
  }

  addCell(rays: readonly Ray[], waves: readonly RowWave[]): void {
    const { cellSum, cellSquares, cellProducts } = this;
    cellSum.fill(0);
    cellSquares.fill(0);
    cellProducts.fill(0);
    let [open, openSquares] = [0, 0];
    for (const [i, ray] of rays.entries()) {
      const row = (waves[ray.wave] as RowWave).rowOf(ray.direction);
      const [isFirst, isLast] = [rays[i - 1]?.wave !== ray.wave, rays[i + 1]?.wave !== ray.wave];
      if (isFirst && isLast) this.addRay(ray, row);
      else this.bundleRay(ray, row, isFirst, isLast);
      open += ray.open;
      openSquares += ray.open ** 2;
    }
    this.open += open;
    this.openSquares += openSquares - open ** 2 / waves.length;
    this.closeCell(open, waves.length);
  }

  /** Adds up rays of one cell and wave, and takes the sum as one; none of them is of the open sky. */
  private bundleRay({ weight, open }: Ray, row: Float64Array, isFirst: boolean, isLast: boolean): void {
    const { bundle } = this;
    if (isFirst) bundle.fill(0);
    for (let g = 0; g < row.length; g++) bundle[g] = (bundle[g] as number) + (row[g] as number) * weight;
    if (isLast) this.addRay({ weight: 1, open }, bundle);
  }

  private addRay({ weight, open }: Pick<Ray, 'weight' | 'open'>, row: Float64Array): void {
    const { cellSum, cellSquares, cellProducts } = this;
    for (let g = 0; g < row.length; g++) {
      const value = (row[g] as number) * weight;
      cellSum[g] = (cellSum[g] as number) + value;
      cellSquares[g] = (cellSquares[g] as number) + value * value;
      cellProducts[g] = (cellProducts[g] as number) + value * open;
    }
  }

  private closeCell(open: number, waveCount: number): void {
    const { cellSum, cellSquares, cellProducts, sum, squares, products } = this;
    for (let g = 0; g < sum.length; g++) {
      const [here, perWave] = [cellSum[g] as number, (cellSum[g] as number) / waveCount];
      sum[g] = (sum[g] as number) + here;
      squares[g] = (squares[g] as number) + (cellSquares[g] as number) - here * perWave;
      products[g] = (products[g] as number) + (cellProducts[g] as number) - perWave * open;
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

function exposureOfRows(
  waves: readonly RowWave[],
  groupCount: number,
  light: CellLight,
): readonly Exposure[] {
  const weights = rayWeights({ waves }, light);
  const [beam, diffuse] = [true, false].map((isBeam) => {
    const part = new Part(groupCount);
    for (const rays of raysByCell(waves, weights, isBeam)) part.addCell(rays, waves);
    return part;
  }) as [Part, Part];
  const count = waves.length;
  return Array.from({ length: groupCount }, (_, g) => {
    const beamShare = (beam.sum[g] as number) / count;
    const diffuseShare = (diffuse.sum[g] as number) / count;
    const standardError = Math.sqrt(beam.variance(g, count) + diffuse.variance(g, count));
    return { share: beamShare + diffuseShare, standardError, beamShare, diffuseShare };
  });
}

/** As `leafExposure` of the ledger and keep-set that the table was made of. */
export function leafExposureOf({ groupCount, waves }: LeafTable, light: CellLight): readonly Exposure[] {
  const rowWaves = waves.map(({ directions, passed }) => ({
    directions,
    rowOf: rowReader(passed, groupCount),
  }));
  return exposureOfRows(rowWaves, groupCount, light);
}

/**
 * Light on both faces of each group's leaves per one-sided leaf area, as share of what a level sensor under open sky
 * gets in the same light; it may pass 1. Light that leaves let through and light from the ground are counted as in
 * `exposure`; a group without leaves has 0. Who asks more than once makes a `leafTable`.
 *
 * Standard error: rays of different cells and waves are independent, each lattice being placed anew, so the variance of the
 * mean over W waves is the sum over cells of the variance within the cell over the waves, over W. Values are taken less
 * their part of the open sky's sample, since each wave is scaled to the open sky's closed sum (ratio estimator, Cochran 1977,
 * Sampling Techniques, section 6.3). It is 0 for a single wave, which cannot tell.
 * @param keep which owners stand; all when left out
 */
export function leafExposure(ledger: LeafLedger, light: CellLight, keep?: KeepSet): readonly Exposure[] {
  checkLeaves(ledger, keep);
  const { waves, groupCount } = ledger;
  const rowWaves = waves.map((wave) => ({
    directions: weighedDirections(wave),
    rowOf: leafRowMaker(wave, keep),
  }));
  return exposureOfRows(rowWaves, groupCount, light);
}
