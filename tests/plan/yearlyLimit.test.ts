import { describe, expect, it } from 'vitest';
import type { Axis } from '../../src/geometry/tree.ts';
import { findFaults } from '../../src/plan/faults.ts';
import { planJob } from '../../src/plan/planJob.ts';
import { ruleContext } from '../../src/plan/ruleContext.ts';
import { windowFor, workYear } from '../../src/plan/windows.ts';
import { amountRemarks, bearingShare, cutAreaShare, limitsOfForm } from '../../src/plan/yearlyLimit.ts';
import { addDays } from '../../src/season/calendar.ts';
import { figValues } from '../../src/species/fig.ts';
import { axis, bud, drain, limb, planInput, stance, straight, tree, trunk, values } from './smallTree.ts';

const buds = (of: string, count: number) =>
  Array.from({ length: count }, (_, i) => bud(`${of}${i}`, 0.1 + 0.05 * i, 137.5 * i));
const whole = (target: string) => ({ kind: 'remove', target, atM: 0 }) as const;

describe('the share of leaf-bearing wood', () => {
  const bare = tree(
    trunk(),
    limb('east', 90, { buds: buds('e', 7) }),
    axis('side', 'east', { atM: 0.5, path: straight(0.3, 0, 40), buds: buds('s', 3) }),
    limb('west', 270, { buds: buds('w', 6) }),
    limb('dead', 0, { condition: 'dead', buds: buds('d', 9) }),
    axis('sucker', 'trunk', { kind: 'sucker', buds: buds('k', 8) }),
    axis('on sucker', 'sucker', { atM: 0.2, path: straight(0.2, 0, 40), buds: buds('o', 2) }),
  );

  it('is that of the buds in rest, with all that goes along; dead wood and suckers are no part of it', () => {
    expect(bearingShare(bare, [whole('side'), whole('dead'), whole('sucker')])).toBeCloseTo(3 / 16, 12);
    expect(bearingShare(bare, [whole('east'), whole('side')])).toBeCloseTo(10 / 16, 12);
    expect(bearingShare(bare, [{ kind: 'rub off bud', target: 'e1', atM: 0 }])).toBe(0);
  });

  it('counts the buds beyond a tip cut', () => {
    expect(bearingShare(bare, [{ kind: 'tip', target: 'west', atM: 0.29 }])).toBeCloseTo(2 / 16, 12);
  });

  it('is that of the leaf area on a tree in leaf', () => {
    const shoot = (id: string, count: number, midribM: number): Axis =>
      axis(id, 'east', { kind: 'shoot', atM: 0.4, foliage: { count, midribM, source: 'measured' } });
    const inLeaf = tree(
      trunk(),
      limb('east', 90, { buds: buds('e', 4) }),
      shoot('a', 9, 0.1),
      shoot('b', 4, 0.2),
    );
    expect(bearingShare(inLeaf, [whole('a')])).toBeCloseTo(0.09 / 0.25, 12);
  });
});

describe('the yearly limit', () => {
  /** Laterals that end in the middle of the crown, all with as many buds. */
  const inwards = (count: number): Axis[] =>
    Array.from({ length: count }, (_, i) =>
      axis(`in${i}`, `limb${i}`, {
        atM: 0.6,
        path: straight(0.45, 72 * i + 175, 30),
        buds: buds(`i${i}`, 5),
      }),
    );
  const limbs = Array.from({ length: 5 }, (_, i) => limb(`limb${i}`, 72 * i, { buds: buds(`l${i}`, 6) }));
  const of = tree(trunk(), ...limbs, ...inwards(5));

  it('stops sound wood from going when a third is reached; the rest is next year’s work', () => {
    const found = findFaults(of, stance, values);
    // Each takes 5 of 55 buds: three make 27 %, four 36 %.
    expect(found.cuts.map(({ target }) => target)).toEqual(['in0', 'in1', 'in2']);
    expect(found.postponed.map(({ target }) => target)).toEqual(['in3', 'in4']);
    expect(found.after.axes).toHaveLength(8);
  });

  it('never holds back what is sick, and counts it', () => {
    const sick = tree(
      trunk(),
      ...limbs.map((one, i) => (i < 2 ? { ...one, condition: 'diseased' as const } : one)),
      ...inwards(5).slice(2),
    );
    const found = findFaults(sick, stance, values);
    expect(found.cuts.map(({ target }) => target)).toEqual(['limb0', 'limb1']);
    expect(found.postponed).toHaveLength(3);
  });

  it('does not hold for forms that are cut to stubs each winter', () => {
    const found = findFaults(of, stance, limitsOfForm(figValues({ cutToStubsEachWinter: 1 })));
    expect([found.cuts.length, found.postponed.length]).toEqual([5, 0]);
    expect(limitsOfForm(values)).toBe(values);
  });

  it('is told in the plan, with what waits', () => {
    const { remarks } = drain(planJob(planInput(of, { date: '2026-02-11', waves: 1 }))).plan;
    expect(remarks.filter((text) => text.includes('can wait'))).toHaveLength(2);
    expect(remarks.find((text) => text.includes('27 % of the buds'))).toBeDefined();
  });
});

describe('the wounds', () => {
  const of = tree(trunk(), limb('east', 90), limb('west', 270, { baseDiameterM: 0.019 }));
  const context = ruleContext(of, stance, values);

  it('are weighed against the section of the trunk', () => {
    // The trunk is 4.95 cm thick half-way up.
    expect(cutAreaShare(context, [whole('east')])).toBeCloseTo((29 / 49.5) ** 2, 9);
    const both = (29 / 49.5) ** 2 + (19 / 49.5) ** 2;
    expect(cutAreaShare(context, [whole('east'), whole('west')])).toBeCloseTo(both, 9);
  });

  it('leave out green shoots', () => {
    const foliage = { count: 9, midribM: 0.16, source: 'measured' } as const;
    const green = tree(
      trunk(),
      limb('east', 90),
      axis('shoot', 'east', { kind: 'shoot', atM: 0.4, foliage }),
    );
    expect(cutAreaShare(ruleContext(green, stance, values), [whole('shoot')])).toBe(0);
  });

  it('leave out dead wood, which must not wait', () => {
    const hulk = tree(trunk(), limb('east', 90, { condition: 'dead', baseDiameterM: 0.047 }));
    const cuts = [whole('east')];
    expect(cutAreaShare(ruleContext(hulk, stance, values), cuts)).toBe(0);
    expect(amountRemarks(ruleContext(hulk, stance, values), cuts)).toEqual([]);
  });

  it('are told when they pass a third of it', () => {
    expect(amountRemarks(context, [whole('west')])).toEqual([]);
    expect(amountRemarks(context, [whole('east')])).toMatchObject([{ about: 'wounds', limit: 0.33 }]);
  });
});

it('heads nothing in the eight weeks before frost, whatever day of the year is asked for', () => {
  const input = planInput(tree(trunk()));
  const why = { rule: 'tip', lengthM: 0.04, nodes: 1, firstCropFigsLost: 0.4, why: 'too high' } as const;
  for (let day = 0; day < 365; day += 6) {
    const date = addDays('2026-01-03', day);
    const window = windowFor([why], workYear({ ...input, date }), date);
    const year = Number(window.from.slice(0, 4));
    const isSafe = [year - 1, year].every((of) => window.to < `${of}-09-24` || window.from > `${of}-11-19`);
    expect(isSafe, `${date}: ${window.from} to ${window.to}`).toBe(true);
  }
});
