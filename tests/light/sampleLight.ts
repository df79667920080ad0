/** Shoots of a sample tree, traced wave by wave in the season's light. */
import type { Receiver } from '../../src/geometry/surface.ts';
import type { CellLight } from '../../src/light/directions.ts';
import type { Grouping } from '../../src/light/exposure.ts';
import type { Ledger, Wave } from '../../src/light/ledger.ts';
import { waveDirections } from '../../src/light/sky/waveDirections.ts';
import { traceWave } from '../../src/light/trace/wave.ts';
import type { RealCanopy } from './trace/realCanopy.ts';

/** The nodes of every `step`th shoot, and each node's shoot as its group. */
export function nodesOfShoots(
  { canopy, receivers }: RealCanopy,
  step: number,
): { some: Receiver[]; grouping: Grouping } {
  const groupOf = new Map(canopy.shoots.filter((_, i) => i % step === 0).map(({ owner }, i) => [owner, i]));
  const taken = canopy.nodes.flatMap(({ owner }, i) => (groupOf.has(owner) ? [i] : []));
  const group = Int32Array.from(taken, (i) => groupOf.get(canopy.nodes[i]?.owner ?? -1) ?? -1);
  return { some: taken.map((i) => receivers[i] as Receiver), grouping: { count: groupOf.size, group } };
}

/** Directions that bring something in this light to a level sensor. */
export function waveOver(
  tree: RealCanopy,
  receivers: readonly Receiver[],
  light: CellLight,
  [seed, wave]: [number, number],
): Wave {
  const { surfaces, canopy, input } = tree;
  const directions = waveDirections({ latitudeDeg: input.site.latitudeDeg, seed, wave }).filter(
    ({ kind, cell }) => kind !== 'ground' && (light[kind][cell] ?? 0) > 0,
  );
  return traceWave({ surfaces, receivers, directions, ownerCount: canopy.owners.length });
}

export const ledgerWith = (
  { canopy }: RealCanopy,
  receivers: readonly Receiver[],
  waves: readonly Wave[],
): Ledger => ({
  ownerCount: canopy.owners.length,
  receiverCount: receivers.length,
  waves,
  seed: 0,
});
