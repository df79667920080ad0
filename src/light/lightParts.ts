/** The light on sensors, taken apart by the way it came. */
import type { CellKind, CellLight, Direction } from './directions.ts';
import { type LeafFigures, leafOptics } from './leafOptics.ts';
import type { KeepSet, Ledger } from './ledger.ts';
import {
  checkSizes,
  eachReceiver,
  fixedShares,
  type Grouping,
  listShares,
  type RowOf,
  rowMaker,
  rowReader,
  standardErrorOf,
} from './nodeTable.ts';
import { rayWeights, type WaveWeights } from './rayWeights.ts';

/** Parts of an exposure, each a share of what a level sensor under open sky gets; they add up to its `share`. */
export interface LightParts {
  /** Straight from the sun, through no leaf of the tree. */
  readonly beam: number;
  /** Straight from the sky, and from where no ray met the sun (`rayWeights`). */
  readonly sky: number;
  /** Straight from the ground, and from what hides the low sky (`hiding` of the light). */
  readonly ground: number;
  /** From all three, through one leaf or more. */
  readonly transmitted: number;
  /** Thrown on by leaves. */
  readonly scattered: number;
}

/** Parts with their doubt: `standardErrors` of each part, in its unit, from the spread of the waves as in `exposure`. */
export interface MeasuredParts {
  readonly parts: LightParts;
  readonly standardErrors: LightParts;
}

/**
 * n leaves pass p^n of the light, t^n of it straight through, t being the bare transmittance: that is p^n to the power of
 * ln t / ln p, whatever n. Returns, for what leaves pass, the share of it that went straight through them.
 */
export function unbentShareOf(figures: LeafFigures): (passed: number) => number {
  const p = leafOptics(figures).transmittance;
  const exponent = p > 0 && p < 1 ? Math.log(figures.leafTransmittance) / Math.log(p) : 1;
  return (passed) => (passed > 0 && passed < 1 ? Math.min(1, passed ** (exponent - 1)) : 1);
}

/** Sums of the parts in one wave, per group. */
class PartSums {
  readonly straight: Readonly<Record<CellKind, Float64Array>>;
  readonly transmitted: Float64Array;
  readonly scattered: Float64Array;

  constructor(count: number) {
    const sums = (): Float64Array => new Float64Array(count);
    this.straight = { beam: sums(), sky: sums(), ground: sums() };
    this.transmitted = sums();
    this.scattered = sums();
  }

  of(group: number): LightParts {
    const { straight, transmitted, scattered } = this;
    return {
      beam: straight.beam[group] as number,
      sky: straight.sky[group] as number,
      ground: straight.ground[group] as number,
      transmitted: transmitted[group] as number,
      scattered: scattered[group] as number,
    };
  }
}

function ofWaves(waves: readonly PartSums[], groupCount: number): readonly MeasuredParts[] {
  return Array.from({ length: groupCount }, (_, g) => {
    const values = waves.map((wave) => wave.of(g));
    const each = (of: (values: number[]) => number): LightParts => ({
      beam: of(values.map(({ beam }) => beam)),
      sky: of(values.map(({ sky }) => sky)),
      ground: of(values.map(({ ground }) => ground)),
      transmitted: of(values.map(({ transmitted }) => transmitted)),
      scattered: of(values.map(({ scattered }) => scattered)),
    });
    const mean = (of: number[]): number => of.reduce((sum, v) => sum + v, 0) / of.length;
    return { parts: each(mean), standardErrors: each(standardErrorOf) };
  });
}

/** Matrices as those of `NodeTable`, of light that passed no leaf, went straight through leaves, was thrown on by them. */
export interface PartsTable {
  readonly groupCount: number;
  readonly waves: readonly {
    readonly directions: readonly Direction[];
    readonly straight: Float64Array;
    readonly transmitted: Float64Array;
    readonly scattered: Float64Array;
  }[];
}

const partNames = ['straight', 'transmitted', 'scattered'] as const;
/** Rows of the three matrices of a wave, made when they are asked for. */
export type RowsOf = Readonly<Record<(typeof partNames)[number], RowOf>>;

/** A wave and its rows. */
interface RowWave {
  readonly directions: readonly Direction[];
  readonly rowsOf: RowsOf;
}

function rowWaves(
  ledger: Ledger,
  figures: LeafFigures,
  grouping: Grouping,
  keep?: KeepSet,
): readonly RowWave[] {
  checkSizes(ledger, grouping, keep);
  const unbentShare = unbentShareOf(figures);
  return ledger.waves.map((wave) => {
    const [whole, fixed] = [listShares(wave, keep), fixedShares(wave)];
    const [straight, transmitted] = [whole.slice(), new Float64Array(whole.length)];
    const scattered = new Float64Array(whole.length);
    whole.forEach((share, l) => {
      const throughLeaves = share === 0 ? 0 : share / (fixed[l] as number);
      if (throughLeaves === 1) return;
      straight[l] = 0;
      transmitted[l] = share * unbentShare(throughLeaves);
      scattered[l] = share - transmitted[l];
    });
    const rowsOf = {
      straight: rowMaker(wave, grouping, straight),
      transmitted: rowMaker(wave, grouping, transmitted),
      scattered: rowMaker(wave, grouping, scattered),
    };
    return { directions: wave.directions, rowsOf };
  });
}

/** All rows of all waves. */
export function tableOfRows(rows: readonly RowWave[], groupCount: number): PartsTable {
  const waves = rows.map(({ directions, rowsOf }) => {
    const matrix = (): Float64Array => new Float64Array(directions.length * groupCount);
    const matrices = { straight: matrix(), transmitted: matrix(), scattered: matrix() };
    for (let d = 0; d < directions.length; d++) {
      for (const name of partNames) matrices[name].set(rowsOf[name](d), d * groupCount);
    }
    return { directions, ...matrices };
  });
  return { groupCount, waves };
}

/** As `nodeTable`, for a canopy whose leaves have the optics of `leafOptics(figures)`: ask it by `partsOf`. */
export function partsTable(
  ledger: Ledger,
  figures: LeafFigures,
  grouping: Grouping = eachReceiver(ledger.receiverCount),
  keep?: KeepSet,
): PartsTable {
  return tableOfRows(rowWaves(ledger, figures, grouping, keep), grouping.count);
}

function addRows({ rowsOf }: RowWave, { weight, from }: WaveWeights, sums: PartSums): void {
  for (const [d, kind] of from.entries()) {
    const w = weight[d] as number;
    if (w === 0) continue;
    for (const name of partNames) {
      const into = name === 'straight' ? sums.straight[kind] : sums[name];
      const row = rowsOf[name](d);
      for (let g = 0; g < row.length; g++) into[g] = (into[g] as number) + w * (row[g] as number);
    }
  }
}

/** Rows of directions without light are not asked for. */
export function partsOfRows(
  waves: readonly RowWave[],
  groupCount: number,
  light: CellLight,
): readonly MeasuredParts[] {
  const weights = rayWeights({ waves }, light);
  const sums = waves.map((wave, w) => {
    const into = new PartSums(groupCount);
    addRows(wave, weights[w] as WaveWeights, into);
    return into;
  });
  return ofWaves(sums, groupCount);
}

/** As `measuredParts` or `measuredLeafParts` of what the table was made of. */
export function partsOf({ groupCount, waves }: PartsTable, light: CellLight): readonly MeasuredParts[] {
  const rows = waves.map(({ directions, straight, transmitted, scattered }) => ({
    directions,
    rowsOf: {
      straight: rowReader(straight, groupCount),
      transmitted: rowReader(transmitted, groupCount),
      scattered: rowReader(scattered, groupCount),
    },
  }));
  return partsOfRows(rows, groupCount, light);
}

/**
 * Parts of `exposure`, with the same arguments, for a canopy whose leaves have the optics of `leafOptics(figures)`.
 * A neighbour's crown, a cloud with light in its gaps alone, counts as no leaf. Who asks more than once makes a `partsTable`.
 */
export function measuredParts(
  ledger: Ledger,
  light: CellLight,
  figures: LeafFigures,
  grouping: Grouping = eachReceiver(ledger.receiverCount),
  keep?: KeepSet,
): readonly MeasuredParts[] {
  return partsOfRows(rowWaves(ledger, figures, grouping, keep), grouping.count, light);
}

/** The parts alone. */
export function exposureParts(
  ledger: Ledger,
  light: CellLight,
  figures: LeafFigures,
  grouping?: Grouping,
  keep?: KeepSet,
): readonly LightParts[] {
  return measuredParts(ledger, light, figures, grouping, keep).map(({ parts }) => parts);
}
