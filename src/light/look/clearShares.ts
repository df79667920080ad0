/** How much of the sky, or of the sun's way, is seen straight from level sensors. */
import type { Direction } from '../directions.ts';
import type { KeepSet, Ledger, Wave } from '../ledger.ts';
import { checkSizes, eachReceiver, fixedShares, type Grouping, listShares, rowMaker } from '../nodeTable.ts';

/** What a cell's direction counts for; 0 leaves it out. Depends on the kind and number of the cell, and on the direction. */
export type DirectionWeight = (direction: Direction) => number;

/** How many waves have a direction in each cell: beam cells on the horizon are traced in some only. */
function wavesOfCells({ waves }: Ledger): (direction: Direction) => number {
  const key = ({ kind, cell }: Direction): string => `${kind} ${cell}`;
  const counts = new Map<string, number>();
  for (const { directions } of waves) {
    for (const direction of directions) counts.set(key(direction), (counts.get(key(direction)) ?? 0) + 1);
  }
  return (direction) => counts.get(key(direction)) ?? 0;
}

/** What each list of the wave lets through straight: 0 where a leaf or wood is on it, else the share of what is fixed. */
function straightShares(wave: Wave, keep?: KeepSet): Float64Array {
  const fixed = fixedShares(wave);
  return listShares(wave, keep).map((share, list) => (share === fixed[list] ? share : 0));
}

/**
 * Per weight and group of receivers: weighted mean over the directions of the share that comes straight, 0 behind any leaf or
 * wood that stands, 1 with nothing in the way, and what passes fixed things that have gaps. In each cell its waves count alike. Only
 * for level sensors: the ledger's rays carry their cosine, which is taken out again. 0 where no direction has weight.
 * @param keep which owners stand; all when left out
 */
export function clearShares(
  ledger: Ledger,
  weights: readonly DirectionWeight[],
  grouping: Grouping = eachReceiver(ledger.receiverCount),
  keep?: KeepSet,
): readonly Float64Array[] {
  checkSizes(ledger, grouping, keep);
  const wavesOf = wavesOfCells(ledger);
  const sums = weights.map(() => ({ whole: 0, clear: new Float64Array(grouping.count) }));
  for (const wave of ledger.waves) {
    const rowOf = rowMaker(wave, grouping, straightShares(wave, keep));
    for (const [d, direction] of wave.directions.entries()) {
      const counts = weights.map((weightOf) => weightOf(direction));
      if (counts.every((weight) => weight === 0)) continue;
      const row = rowOf(d);
      counts.forEach((weight, k) => {
        const { clear } = sums[k] as { clear: Float64Array };
        const part = weight / wavesOf(direction);
        (sums[k] as { whole: number }).whole += part;
        const scale = part / direction.toSky[1];
        for (let g = 0; g < row.length; g++) clear[g] = (clear[g] as number) + scale * (row[g] as number);
      });
    }
  }
  return sums.map(({ whole, clear }) => clear.map((value) => (whole > 0 ? value / whole : 0)));
}
