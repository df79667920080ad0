import { describe, expect, it } from 'vitest';
import type { Axis } from '../../src/geometry/tree.ts';
import { planJob } from '../../src/plan/planJob.ts';
import type { RenewalWay } from '../../src/plan/renewal.ts';
import { renewalTitle, renewalYearText } from '../../src/plan/renewalWords.ts';
import { axis, bud, drain, limb, planInput, straight, tree, trunk } from './smallTree.ts';

const buds = (of: string, count: number) =>
  Array.from({ length: count }, (_, i) => bud(`${of}${i}`, 0.13 + 0.13 * i, 137.5 * i));
const limbs = [
  limb('young', 20, { grownIn: 2024, buds: buds('y', 5) }),
  limb('old', 110, { grownIn: 2020, buds: buds('o', 5) }),
  limb('older, sound', 190, { grownIn: 2019, buds: buds('p', 4) }),
  limb('sick', 285, { grownIn: 2023, condition: 'diseased', buds: buds('q', 3) }),
];
const sucker = (baseDiameterM: number) =>
  axis('sucker', 'trunk', {
    name: 'East sucker',
    kind: 'sucker',
    atM: 0.04,
    path: straight(1.1, 95, 76),
    baseDiameterM,
    buds: buds('s', 6),
  });
const waysOf = (...axes: readonly Axis[]): readonly RenewalWay[] => {
  const input = planInput(tree(trunk(), ...axes), { date: '2026-02-03', renewal: true, waves: 1 });
  return drain(planJob(input)).plan.renewal ?? [];
};

describe('renewal', () => {
  const [toSucker, byLimbs] = waysOf(...limbs, sucker(0.019)) as [RenewalWay, RenewalWay];

  it('is offered only when asked for, and only where the tree has what it needs', () => {
    const plain = planInput(tree(trunk(), ...limbs), { date: '2026-02-03', waves: 1 });
    expect(drain(planJob(plain)).plan.renewal).toBeUndefined();
    expect(waysOf(...limbs, sucker(0.008)).map(({ way }) => way)).toEqual(['a third a year']);
    expect(waysOf(...limbs.slice(0, 2), sucker(0.019)).map(({ way }) => way)).toEqual(['to a sucker']);
    expect(waysOf(...limbs.slice(0, 2))).toEqual([]);
  });

  it('cuts the trunk just above a strong sucker', () => {
    const [cut, ...others] = toSucker.years[0]?.cuts ?? [];
    expect(others).toEqual([]);
    expect([cut?.target, toSucker.sucker]).toEqual(['trunk', 'East sucker']);
    expect(cut?.atM).toBeCloseTo(0.04 + 0.058 - (0.017 * 0.04) / 0.62, 9);
    expect(toSucker.years.slice(1).flatMap(({ cuts }) => cuts)).toEqual([]);
  });

  it('takes a third of the limbs each winter: sick ones, then the oldest', () => {
    const byYear = byLimbs.years.map(({ cuts }) => cuts.map(({ target }) => target));
    expect(byYear).toEqual([['sick', 'older, sound'], ['old'], ['young'], [], []]);
  });

  it('tells what is lost in which year, and when all is back', () => {
    for (const { ripeFigsNow, years } of [toSucker, byLimbs]) {
      expect(years[0]?.ripeFigs.low).toBeLessThan(ripeFigsNow);
      expect(years[0]?.ripeFigs.high).toBe(years[0]?.ripeFigs.low);
      for (const { ripeFigs } of years) expect(ripeFigs.high).toBeGreaterThanOrEqual(ripeFigs.low);
      expect(years.at(-1)?.ripeFigs.low).toBeGreaterThanOrEqual(ripeFigsNow - 1e-9);
    }
    // All at once costs more in the first year, and is back sooner.
    expect(toSucker.years[0]?.ripeFigs.low).toBeLessThan(byLimbs.years[0]?.ripeFigs.low as number);
    expect(toSucker.years.length).toBeLessThan(byLimbs.years.length);
  });

  it('never takes what the grower pinned to keep', () => {
    const pinned = limbs.map((one) => (one.id === 'old' ? { ...one, pin: 'keep' as const } : one));
    const [way, ...others] = waysOf(...pinned, sucker(0.019));
    expect(others).toEqual([]);
    expect(way?.years.flatMap(({ cuts }) => cuts.map(({ target }) => target))).not.toContain('old');
  });

  it('is told in plain words', () => {
    expect(renewalTitle(toSucker)).toContain('East sucker becomes the tree');
    expect(renewalTitle(byLimbs)).toContain('a third of the limbs each winter');
    expect(renewalYearText({ year: 2, cuts: [], ripeFigs: { low: 11.7, high: 19.2 } })).toBe(
      'Year 2: 12 to 19 ripe figs',
    );
    expect(renewalYearText({ year: 1, cuts: [], ripeFigs: { low: 11.7, high: 12.1 } })).toBe(
      'Year 1: about 12 ripe figs',
    );
  });
});
