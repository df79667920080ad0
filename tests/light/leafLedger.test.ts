import { describe, expect, it } from 'vitest';
import { leafExposure } from '../../src/light/leafExposure.ts';
import { type LeafLedger, regrouped } from '../../src/light/leafLedger.ts';
import { lightOf } from './cells.ts';
import { tracedLeaves } from './leafLedgers.ts';
import { sceneOf } from './trace/scene.ts';

const ownerCount = 9;

/** The same rays with groups of the caller's. */
function ledgerOf(seed: number, groupOf: (leaf: number) => number, groupCount: number): LeafLedger {
  const { surfaces } = sceneOf(seed, { leaves: 31, stems: 7, triangles: 2, clouds: 0, openReceivers: 1 });
  let leaf = 0;
  const group = Int32Array.from(surfaces, ({ shape }) => (shape === 'blade' ? groupOf(leaf++) : -1));
  return tracedLeaves({ surfaces, group, groupCount, ownerCount, seed, waveCount: 2 });
}

describe('a regrouped ledger', () => {
  it.each([71, 72])('answers as if its leaves had been traced in the larger groups, seed %i', (seed) => {
    const larger = (leaf: number): number => (7 * leaf) % 4;
    const single = ledgerOf(seed, (leaf) => leaf, 31);
    const together = regrouped(
      single,
      Int32Array.from({ length: 31 }, (_, leaf) => larger(leaf)),
      4,
    );
    const traced = leafExposure(ledgerOf(seed, larger, 4), lightOf(0.2));
    leafExposure(together, lightOf(0.2)).forEach(({ share, standardError }, group) => {
      expect(share).toBeCloseTo(traced[group]?.share as number, 12);
      expect(standardError).toBeCloseTo(traced[group]?.standardError as number, 12);
    });
    expect(leafExposure(single, lightOf(0.2))).toHaveLength(31);
  });

  it('needs an entry for every group', () => {
    expect(() =>
      regrouped(
        ledgerOf(73, (leaf) => leaf, 31),
        new Int32Array(30),
        1,
      ),
    ).toThrow('got 30');
  });
});
