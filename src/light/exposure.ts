/** Light on receivers and groups of receivers, read from the ledger for any period and any set of kept owners. */
import type { CellLight } from './directions.ts';
import type { Exposure, KeepSet, Ledger } from './ledger.ts';
import {
  checkSizes,
  eachReceiver,
  exposureOfWaves,
  type Grouping,
  listShares,
  rowMaker,
  waveLight,
} from './nodeTable.ts';
import { rayWeights, type WaveWeights } from './rayWeights.ts';

export { eachReceiver, type Grouping, listShares };

/**
 * Exposure of each group, as share of what a level sensor under open sky gets in the same light. For leaves (receivers
 * with both sides) it is the light on both faces per one-sided area, and may pass 1; so may a tilted sensor. Light that
 * leaves let through is counted by their transmitted share, light from the ground by the ground cells; a group
 * without weight has exposure 0. Standard error: spread of the waves' values of the group, n - 1 in the denominator, over
 * the root of n; it is 0 for a single wave, which cannot tell. Who asks more than once of the same groups and owners makes a
 * `nodeTable` and asks that (`exposureOf`): the same figures to the last bit, in a fiftieth of the time.
 *
 * Light thrown back by walls is in the ledger's own directions for it. Dropped: that of pot and wood.
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
  const lights = ledger.waves.map((wave, w) => {
    const rowOf = rowMaker(wave, grouping, listShares(wave, keep));
    return waveLight(weights[w] as WaveWeights, grouping.count, rowOf);
  });
  return exposureOfWaves(lights, grouping.count);
}
