import { describe, expect, it } from 'vitest';
import type { Tree } from '../../../src/geometry/tree.ts';
import { figValues } from '../../../src/species/fig.ts';
import { bud, limb, straight, tree, trunk } from '../smallTree.ts';
import { lightsOf, planOf, summer, targets, upright } from './knownTrees.ts';

describe('a whip with nothing to do', () => {
  const whip = tree(
    trunk({ grownIn: 2025, buds: [bud('low', 0.3, 0), bud('mid', 0.45, 137), bud('top', 0.61, 275)] }),
  );

  it('is left as it is, and the plan says so', () => {
    const { plan } = planOf(whip);
    expect(plan.cuts).toEqual([]);
    expect(plan.remarks).toEqual(['Nothing needs doing on this day.']);
    expect(plan.score.plan).toEqual(plan.score.doNothing);
  });

  it('is left as it is in winter, too', () => {
    const { plan } = planOf(whip, { date: '2026-01-19' });
    expect(plan.cuts).toEqual([]);
    expect(plan.remarks.at(-1)).toBe('Nothing needs doing on this day.');
  });
});

describe('a dead tree', () => {
  const dead = tree(
    trunk({ condition: 'dead' }),
    limb('limb', 90, { condition: 'dead', buds: [bud('b', 0.8)] }),
  );

  it.each(['2026-01-19', '2026-04-03', summer])(
    'is work for an arborist, never nothing to do: %s',
    (date) => {
      const { plan } = planOf(dead, { date });
      expect(plan.cuts).toEqual([]);
      expect(plan.score.plan.ripeFigs).toBe(0);
      expect(plan.remarks[0]).toContain('have a licensed arborist look at it');
      expect(plan.remarks.join(' ')).not.toContain('Nothing needs doing');
    },
  );
});

describe('a tree of one shoot', () => {
  it.each([
    ['a bud', tree(trunk({ grownIn: 2025, buds: [bud('only', 0.61)] })), '2026-04-03'],
    [
      'a bud on a limb',
      tree(trunk(), limb('limb', 200, { grownIn: 2025, buds: [bud('only', 0.8)] })),
      '2026-04-03',
    ],
    [
      'a shoot in leaf',
      tree(
        trunk(),
        limb('limb', 90),
        upright('only', 'limb', 0.8, { leaves: 9, lengthM: 0.4, midribM: 0.17 }),
      ),
      summer,
    ],
  ])('keeps it: %s', (_, of: Tree, date) => {
    const { plan } = planOf(of, { date });
    expect(plan.cuts).toEqual([]);
    expect(plan.score.plan.shootCount).toBe(1);
    expect(plan.score.plan).toEqual(plan.score.doNothing);
  });

  it('keeps it where it bears nothing', () => {
    const shade = upright('only', 'limb', 0.8, { leaves: 2, lengthM: 0.1, midribM: 0.17 });
    const { plan } = planOf(tree(trunk(), limb('limb', 90), shade), { date: summer });
    expect(plan.score.plan.ripeFigs).toBe(0);
    expect(plan.cuts).toEqual([]);
  });
});

describe('two buds at one node', () => {
  const pair = (keep: string | null = null): Tree =>
    tree(
      trunk(),
      limb('east', 90, {
        buds: [
          bud('end', 0.8, 0),
          bud('left', 0.5, 80, keep === 'left' ? 'keep' : null),
          bud('right', 0.51, 100, keep === 'right' ? 'keep' : null),
        ],
      }),
    );

  it.each([1, 2, 3, 4])('keep one, the one with which the tree ripens more, leaves %i', (leafSeed) => {
    const { plan } = planOf(pair(), { leafSeed });
    expect(plan.cuts).toHaveLength(1);
    const [cut] = plan.cuts;
    expect(['left', 'right']).toContain(cut?.target);
    expect(cut?.reasons.find(({ rule }) => rule === 'pair')).toMatchObject({ gapM: expect.closeTo(0.01, 9) });
    const other = planOf(pair(cut?.target), { leafSeed });
    expect(targets(other)).toEqual([cut?.target === 'left' ? 'right' : 'left']);
    const worth = ({ ripeFigs, fruitingWoodM }: typeof plan.score.plan): number =>
      ripeFigs + 0.25 * fruitingWoodM;
    // Each is scored on its own canopy and rays: they may differ by a fiftieth of a fig.
    expect(worth(plan.score.plan)).toBeGreaterThan(worth(other.plan.score.plan) - 0.02);
  });

  it('keep both when the grower says so', () => {
    const both = tree(
      trunk(),
      limb('east', 90, {
        buds: [bud('end', 0.8, 0), bud('left', 0.5, 80, 'keep'), bud('right', 0.51, 100, 'keep')],
      }),
    );
    expect(targets(planOf(both))).toEqual([]);
  });
});

describe('a tree that is its own mirror image, east and west', () => {
  const limbs = [90, 270].flatMap((bearing) => [
    limb(`limb${bearing}`, bearing, { path: straight(0.83, bearing, 20) }),
    ...[0.25, 0.35, 0.45, 0.55, 0.65, 0.8].map((atM, i) =>
      upright(
        `${bearing}-${i}`,
        `limb${bearing}`,
        atM,
        { leaves: 12, lengthM: 0.5, midribM: 0.2 },
        {
          path: straight(0.5, bearing, 80),
        },
      ),
    ),
  ]);
  const of = tree(trunk(), ...limbs);
  const seeds = Array.from({ length: 8 }, (_, i) => i + 1);
  const plans = seeds.map((leafSeed) =>
    planOf(of, { date: summer, leafSeed, seed: leafSeed + 20, waves: 2 }),
  );
  const sumOf = (lights: ReadonlyMap<string, number>, limbId: string): number =>
    [...lights].reduce((sum, [id, light]) => (id.startsWith(limbId) ? sum + light : sum), 0);

  it('gets as much light on either side, within what chance in the leaves explains', () => {
    const differences = plans.map((found) => {
      const lights = lightsOf(found, []);
      return (sumOf(lights, '90-') - sumOf(lights, '270-')) / 6;
    });
    const mean = differences.reduce((a, b) => a + b) / differences.length;
    const spread = Math.sqrt(differences.reduce((sum, d) => sum + (d - mean) ** 2, 0) / (seeds.length - 1));
    // Student's t with 7 degrees of freedom: 99.9 % within 5.4 standard errors; and those are small.
    expect(Math.abs(mean)).toBeLessThan((5.4 * spread) / Math.sqrt(seeds.length));
    expect(spread / Math.sqrt(seeds.length)).toBeLessThan(0.02);
  });

  it('is thinned as much on either side', () => {
    const gone = (limbId: string): number =>
      plans.reduce((sum, found) => sum + targets(found).filter((id) => id.startsWith(limbId)).length, 0);
    expect(gone('90-') + gone('270-')).toBeGreaterThan(seeds.length);
    // Fair coins: the difference of n of them stays within 3.3 roots of n in 99.9 of 100 cases.
    expect(Math.abs(gone('90-') - gone('270-'))).toBeLessThan(3.3 * Math.sqrt(gone('90-') + gone('270-')));
  });
});

describe('four limbs with more buds than they hold', () => {
  const of = tree(
    trunk(),
    ...[20, 110, 200, 290].map((bearing) =>
      limb(`limb${bearing}`, bearing, {
        buds: Array.from({ length: 5 }, (_, i) => bud(`${bearing}-${i}`, 0.8 - 0.13 * i, 137.5 * i)),
      }),
    ),
  );
  const { plan } = planOf(of, { values: figValues({ shootsPerScaffold: 3 }), waves: 2 });

  it('keep as many on each, the outermost bud among them', () => {
    const gone = plan.cuts.map(({ target }) => target);
    for (const bearing of [20, 110, 200, 290]) {
      expect(gone.filter((id) => id.startsWith(`${bearing}-`))).toHaveLength(2);
      expect(gone).not.toContain(`${bearing}-0`);
    }
  });

  it('say that the limb is full', () => {
    for (const { reasons } of plan.cuts) {
      expect(reasons.find(({ rule }) => rule === 'limb full')).toMatchObject({ kept: 3, limit: 3 });
    }
  });
});
