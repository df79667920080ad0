/** The light on sensors and on leaves, taken apart by the way it came. */
import type { CellKind, CellLight, Direction } from './directions.ts';
import { checkLeaves, kindShares } from './leafExposure.ts';
import type { LeafLedger, LeafWave } from './leafLedger.ts';
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
  standardErrorOf,
} from './nodeTable.ts';
import { rayWeights, type WaveWeights } from './rayWeights.ts';

/** Parts of an exposure, each a share of what a level sensor under open sky gets; they add up to its `share`. */
export interface LightParts {
  /** Straight from the sun, through no leaf of the tree. */
  readonly beam: number;
  /** Straight from the sky, and from where no ray met the sun (`rayWeights`). */
  readonly sky: number;
  /** Straight from the ground. */
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
function unbentShareOf(figures: LeafFigures): (passed: number) => number {
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

const addTo = (sums: Float64Array, group: number, light: number): void => {
  sums[group] = (sums[group] as number) + light;
};

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
type RowsOf = Readonly<Record<(typeof partNames)[number], RowOf>>;

/** Rows of the three matrices of each wave, made when they are asked for. */
function rowMakers(
  ledger: Ledger,
  figures: LeafFigures,
  grouping: Grouping,
  keep?: KeepSet,
): readonly RowsOf[] {
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
      const unbent = share * unbentShare(throughLeaves);
      transmitted[l] = unbent;
      scattered[l] = share - unbent;
    });
    return {
      straight: rowMaker(wave, grouping, straight),
      transmitted: rowMaker(wave, grouping, transmitted),
      scattered: rowMaker(wave, grouping, scattered),
    };
  });
}

/** As `nodeTable`, for a canopy whose leaves have the optics of `leafOptics(figures)`: ask it by `partsOf`. */
export function partsTable(
  ledger: Ledger,
  figures: LeafFigures,
  grouping: Grouping = eachReceiver(ledger.receiverCount),
  keep?: KeepSet,
): PartsTable {
  const groupCount = grouping.count;
  const makers = rowMakers(ledger, figures, grouping, keep);
  const waves = ledger.waves.map(({ directions }, w) => {
    const matrix = (name: (typeof partNames)[number]): Float64Array => {
      const rowOf = (makers[w] as RowsOf)[name];
      const entries = new Float64Array(directions.length * groupCount);
      for (let d = 0; d < directions.length; d++) entries.set(rowOf(d), d * groupCount);
      return entries;
    };
    return {
      directions,
      straight: matrix('straight'),
      transmitted: matrix('transmitted'),
      scattered: matrix('scattered'),
    };
  });
  return { groupCount, waves };
}

function addRows(directions: readonly Direction[], { weight }: WaveWeights, rowsOf: RowsOf, sums: PartSums) {
  for (const [d, { kind }] of directions.entries()) {
    const w = weight[d] as number;
    if (w === 0) continue;
    for (const name of partNames) {
      const into = name === 'straight' ? sums.straight[kind] : sums[name];
      rowsOf[name](d).forEach((passed, g) => {
        addTo(into, g, w * passed);
      });
    }
  }
}

/** As `measuredParts` of what the table was made of. */
export function partsOf({ groupCount, waves }: PartsTable, light: CellLight): readonly MeasuredParts[] {
  const weights = rayWeights({ waves }, light);
  const sums = waves.map((wave, w) => {
    const row =
      (matrix: Float64Array): RowOf =>
      (d) =>
        matrix.subarray(d * groupCount, (d + 1) * groupCount);
    const { directions, straight, transmitted, scattered } = wave;
    const rowsOf = {
      straight: row(straight),
      transmitted: row(transmitted),
      scattered: row(scattered),
    };
    const into = new PartSums(groupCount);
    addRows(directions, weights[w] as WaveWeights, rowsOf, into);
    return into;
  });
  return ofWaves(sums, groupCount);
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
  const makers = rowMakers(ledger, figures, grouping, keep);
  const weights = rayWeights(ledger, light);
  const sums = ledger.waves.map(({ directions }, w) => {
    const into = new PartSums(grouping.count);
    addRows(directions, weights[w] as WaveWeights, makers[w] as RowsOf, into);
    return into;
  });
  return ofWaves(sums, grouping.count);
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

function addLeafWave(
  wave: LeafWave,
  { weight }: WaveWeights,
  figures: LeafFigures,
  keep?: KeepSet,
): PartSums {
  const { directions, hitKind, hitShare, hitStart, kindGroup, groupAreaM2, groupCount, rayAreaM2 } = wave;
  const sums = new PartSums(groupCount);
  const shares = kindShares(wave, keep);
  const unbentShares = shares.map(unbentShareOf(figures));
  for (const [d, direction] of directions.entries()) {
    const rayLight = (weight[d] as number) * rayAreaM2;
    if (rayLight === 0) continue;
    let [passed, unbent] = [1, 1];
    for (let k = hitStart[d] as number; k < (hitStart[d + 1] as number); k++) {
      const marked = hitKind[k] as number;
      const kind = marked < 0 ? ~marked : marked;
      if (marked < 0) {
        passed = 1;
        unbent = 1;
      }
      const group = kindGroup[kind] as number;
      if (group >= 0 && passed > 0) {
        const light = (rayLight * passed * (hitShare?.[k] ?? 1)) / (groupAreaM2[group] as number);
        if (passed === 1) addTo(sums.straight[direction.kind], group, light);
        else {
          addTo(sums.transmitted, group, light * unbent);
          addTo(sums.scattered, group, light - light * unbent);
        }
      }
      passed *= shares[kind] as number;
      unbent *= unbentShares[kind] as number;
    }
  }
  return sums;
}

/** Parts of `leafExposure`, as `measuredParts` takes those of `exposure`. */
export function measuredLeafParts(
  ledger: LeafLedger,
  light: CellLight,
  figures: LeafFigures,
  keep?: KeepSet,
): readonly MeasuredParts[] {
  checkLeaves(ledger, keep);
  const sums = rayWeights(ledger, light).map((weights, w) =>
    addLeafWave(ledger.waves[w] as LeafWave, weights, figures, keep),
  );
  return ofWaves(sums, ledger.groupCount);
}

/** The parts alone. */
export function leafExposureParts(
  ledger: LeafLedger,
  light: CellLight,
  figures: LeafFigures,
  keep?: KeepSet,
): readonly LightParts[] {
  return measuredLeafParts(ledger, light, figures, keep).map(({ parts }) => parts);
}
