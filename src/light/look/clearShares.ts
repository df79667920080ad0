/** How much of the sky, or of the sun's way, is seen straight from level sensors. */
import type { CellKind, Direction } from '../directions.ts';
import type { KeepSet, Ledger, Wave } from '../ledger.ts';
import { checkSizes, eachReceiver, fixedShares, type Grouping, listShares, rowMaker } from '../nodeTable.ts';

/** What a direction counts for; 0 leaves it out. */
export type DirectionWeight = (direction: Direction) => number;

export interface ClearOptions {
  /** Every receiver by itself when left out. */
  readonly grouping?: Grouping;
  /** Which owners stand; all when left out. */
  readonly keep?: KeepSet;
  /** Whether something far off hides a direction from all of the tree; nothing does when left out. */
  readonly isHidden?: (direction: Direction) => boolean;
}

/** How many waves have a direction in each cell: beam cells on the horizon are traced in some only. */
function wavesOfCells({ waves }: Ledger): (direction: Direction) => number {
  const counts: Record<CellKind, number[]> = { sky: [], beam: [], ground: [] };
  for (const { directions } of waves) {
    for (const { kind, cell } of directions) counts[kind][cell] = (counts[kind][cell] ?? 0) + 1;
  }
  return ({ kind, cell }) => counts[kind][cell] ?? 0;
}

/** What each list of the wave lets through straight: 0 where a leaf or wood is on it, else the share of what is fixed. */
function straightShares(wave: Wave, keep?: KeepSet): Float64Array {
  const fixed = fixedShares(wave);
  return listShares(wave, keep).map((share, list) => (share === fixed[list] ? share : 0));
}

function addScaled(into: Float64Array, row: Float64Array, scale: number): void {
  for (let g = 0; g < row.length; g++) into[g] = (into[g] as number) + scale * (row[g] as number);
}

/**
 * Per weight and group of receivers: weighted mean over the directions of the share that comes straight, 0 behind any leaf or
 * wood that stands, 1 with nothing in the way, and what passes fixed things that have gaps. In each cell its waves count alike. Only
 * for level sensors: the ledger's rays carry their cosine, which is taken out again. 0 where no direction has weight.
 */
export function clearShares(
  ledger: Ledger,
  weights: readonly DirectionWeight[],
  options: ClearOptions = {},
): readonly Float64Array[] {
  const steps = clearShareSteps(ledger, weights, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** As `clearShares`, handing over after each wave. */
export function* clearShareSteps(
  ledger: Ledger,
  weights: readonly DirectionWeight[],
  { grouping = eachReceiver(ledger.receiverCount), keep, isHidden = () => false }: ClearOptions = {},
): Generator<void, readonly Float64Array[], unknown> {
  checkSizes(ledger, grouping, keep);
  const wavesOf = wavesOfCells(ledger);
  const sums = weights.map(() => ({ whole: 0, clear: new Float64Array(grouping.count) }));
  for (const wave of ledger.waves) {
    const rowOf = rowMaker(wave, grouping, straightShares(wave, keep));
    for (const direction of wave.directions.keys()) {
      const towards = wave.directions[direction] as Direction;
      const parts = weights.map((weightOf) => weightOf(towards) / wavesOf(towards));
      if (parts.every((part) => part === 0)) continue;
      const row = isHidden(towards) ? null : rowOf(direction);
      sums.forEach((sum, k) => {
        const part = parts[k] as number;
        sum.whole += part;
        if (row !== null && part !== 0) addScaled(sum.clear, row, part / towards.toSky[1]);
      });
    }
    yield;
  }
  return sums.map(({ whole, clear }) => clear.map((value) => (whole > 0 ? value / whole : 0)));
}
