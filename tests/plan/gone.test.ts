import { describe, expect, it } from 'vitest';
import { pathLengthM } from '../../src/geometry/path.ts';
import { placeTree } from '../../src/geometry/tree.ts';
import { distance, type Vec3 } from '../../src/geometry/vec.ts';
import { ownersLeft } from '../../src/growth/owners.ts';
import { applyCuts } from '../../src/plan/applyCuts.ts';
import { goneIds, keptLengths } from '../../src/plan/gone.ts';
import { planJob } from '../../src/plan/planJob.ts';
import { tryCuts } from '../../src/plan/trial.ts';
import { figValues } from '../../src/species/fig.ts';
import { axis, bud, drain, limb, planInput, straight, tree, trunk } from './smallTree.ts';

const sketch = tree(
  trunk(),
  limb('east', 90),
  axis('last', 'east', {
    atM: 0.79,
    path: straight(0.72, 20, 55),
    buds: [0.31, 0.52, 0.66, 0.71].map((atM, i) => bud(`b${i}`, atM, 137.5 * i)),
  }),
);
const input = planInput(sketch, { date: '2026-02-17', values: figValues({}) });
const { plan, trial } = drain(planJob(input));

describe('a tip cut', () => {
  const [cut] = plan.cuts;

  it('is proposed for long bare wood, at most 10 cm', () => {
    expect(plan.cuts.map(({ kind, target }) => [kind, target])).toEqual([['tip', 'last']]);
    expect(0.72 - (cut?.atM ?? 0)).toBeGreaterThan(0.01);
    expect(0.72 - (cut?.atM ?? 0)).toBeLessThanOrEqual(0.1);
  });

  it('leaves no wood and no bud beyond it in the tree after the cuts', () => {
    const last = applyCuts(sketch, plan.cuts).axes.find(({ id }) => id === 'last');
    expect(pathLengthM(last?.path ?? [])).toBeCloseTo(cut?.atM ?? 0, 12);
    expect(last?.buds.every(({ atM }) => atM <= (cut?.atM ?? 0))).toBe(true);
    expect(last?.buds.length).toBeLessThan(4);
  });

  it('leaves no wood, shoot or leaf beyond it in the light of the plan', () => {
    const { canopy } = trial.traced.full;
    const keep = ownersLeft(canopy.owners, goneIds(sketch, plan.cuts));
    const base = placeTree(sketch, input.stance).get('last')?.path[0] as Vec3;
    const ownWood = canopy.wood.filter(
      ({ owner }) => keep[owner] === 1 && canopy.owners[owner]?.id.startsWith('last'),
    );
    expect(Math.max(...ownWood.map(({ to }) => distance(base, to)))).toBeCloseTo(cut?.atM ?? 0, 9);
    const shoots = canopy.shoots.filter(({ owner }) => keep[owner] === 1);
    expect(shoots.map(({ id }) => id)).toEqual(
      applyCuts(sketch, plan.cuts).axes.flatMap(({ buds }) => buds.map(({ id }) => id)),
    );
    expect(plan.score.plan.shootCount).toBe(plan.score.doNothing.shootCount - 1);
  });

  it('can be left undone: then its wood casts its shade as before', () => {
    const undone = tryCuts(trial, []);
    expect(undone.score.shootCount).toBe(plan.score.doNothing.shootCount);
    expect(undone.shoots.map(({ id }) => id)).toContain('b3');
  });

  it('counts the one nearest to the base when a branch is shortened twice', () => {
    const twice = [0.61, 0.43, 0.7].map((atM) => ({ kind: 'tip' as const, target: 'last', atM }));
    expect(keptLengths(twice).get('last')).toBe(0.43);
    expect([...goneIds(sketch, twice)]).toContain('b1');
  });
});
