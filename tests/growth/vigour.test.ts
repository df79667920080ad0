import { describe, expect, it } from 'vitest';
import { placeTree } from '../../src/geometry/tree.ts';
import { numberMembers } from '../../src/growth/owners.ts';
import { balancedShootCount, budVigour, shareReserve } from '../../src/growth/vigour.ts';
import { figValues } from '../../src/species/fig.ts';
import { pottedFig } from './figTree.ts';

const values = figValues({});
const tree = pottedFig();
const placed = placeTree(tree, { foot: [0, 0, 0], turnedDeg: 0 });
const none = new Set<string>();

const vigourOf = (budId: string, gone: readonly string[], seed = 5): number => {
  const sharing = shareReserve(numberMembers(tree, new Set(gone)), placed, none, values);
  for (const wood of placed.values()) {
    const bud = wood.axis.buds.find((b) => b.id === budId);
    if (bud !== undefined) return budVigour(wood, bud, sharing, values, seed);
  }
  throw new Error(`no bud ${budId}`);
};
const buds = tree.axes.flatMap((a) => a.buds.map((b) => b.id));

describe('shared vigour', () => {
  it('counts the shoots that wood holds by its thickness', () => {
    // 4.8 cm: 10^(-0.71 + 2.145 * 0.68124) = 5.640 m2, over 0.258 m2.
    expect(balancedShootCount(0.048, values)).toBeCloseTo(21.86, 1);
  });

  it('makes the rest stronger when shoots go, most on the same limb', () => {
    const own = vigourOf('limb-1-b4', []);
    const sameLimb = vigourOf(
      'limb-1-b4',
      buds.filter((id) => id.startsWith('limb-1-lateral')),
    );
    const otherLimb = vigourOf(
      'limb-1-b4',
      buds.filter((id) => id.startsWith('limb-3-lateral')),
    );
    expect(otherLimb).toBeGreaterThan(own);
    expect(sameLimb).toBeGreaterThan(otherLimb);
  });

  it('gives about a third more length when a third of the shoots goes, by the exponent chosen', () => {
    const gone = buds.filter((_, i) => i % 3 === 0);
    const ratio = vigourOf('limb-2-b3', gone) / vigourOf('limb-2-b3', []);
    const expected = (52 / (52 - gone.length)) ** (0.4 * 0.7);
    expect(ratio).toBeGreaterThan(expected);
    expect(ratio).toBeLessThan(1.25);
  });

  it('does not count those told not to share, though they grow', () => {
    const apart = new Set(buds.slice(9));
    const counted = shareReserve(numberMembers(tree, apart), placed, none, values);
    const uncounted = shareReserve(numberMembers(tree, none), placed, apart, values);
    expect(uncounted.treeRatio).toBe(counted.treeRatio);
  });

  it('stays within its limits', () => {
    const alone = vigourOf(
      'limb-4-lateral-3-b3',
      buds.filter((id) => id !== 'limb-4-lateral-3-b3'),
    );
    expect(alone).toBe(values.vigourHighest);
  });

  it('favours the tip of a branch over its base, on average over chance (seeds 0 to 199)', () => {
    const mean = (id: string) =>
      Array.from({ length: 200 }, (_, s) => vigourOf(id, [], s)).reduce((a, b) => a + b, 0) / 200;
    expect(mean('limb-2-b4')).toBeGreaterThan(1.05 * mean('limb-2-b1'));
  });
});
