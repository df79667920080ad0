import { describe, expect, it } from 'vitest';
import type { PlanInput } from '../../src/plan/input.ts';
import { pinchText } from '../../src/plan/pinchWords.ts';
import { planJob } from '../../src/plan/planJob.ts';
import { shortDay } from '../../src/season/calendar.ts';
import { figValues } from '../../src/species/fig.ts';
import { axis, bud, drain, limb, planInput, straight, tree, trunk } from './smallTree.ts';

const buds = (of: string, count: number) =>
  Array.from({ length: count }, (_, i) => bud(`${of}${i}`, 0.13 + 0.11 * i, 137.5 * i));
const sketch = tree(
  trunk(),
  limb('east', 90, { buds: buds('e', 6) }),
  limb('west', 270, { buds: buds('w', 5) }),
);
const planOf = (rest: Partial<PlanInput> = {}, of = sketch) => drain(planJob(planInput(of, rest))).plan;

describe('the advice to pinch', () => {
  const plan = planOf({ potVolumeL: 31 });
  const pinch = plan.pinch;
  if (pinch === null) throw new Error('a crowded pot wants a pinch');

  it('counts the harvest without a pinch as the plan does', () => {
    expect(pinch.without.ripeFigs).toBeCloseTo(plan.score.plan.ripeFigs, 5);
  });

  it('brings more figs into warm, dry weeks, and brings the harvest forward', () => {
    expect(pinch.with.inGoodWeeks).toBeGreaterThan(pinch.without.inGoodWeeks);
    expect((pinch.with.peakFrom as string) <= (pinch.without.peakFrom as string)).toBe(true);
    const sum = pinch.weeks.reduce((all, week) => all + week.with, 0);
    expect(Math.abs(sum - pinch.with.ripeFigs)).toBeLessThan(0.05 * 40);
  });

  it('is dated by heat, after leaf-out and more than eight weeks before the end of the season', () => {
    expect(pinch.when.from > '2026-04-20').toBe(true);
    expect(pinch.when.to <= '2026-09-24').toBe(true);
  });

  it('is told in one sentence after another', () => {
    const text = pinchText({ ...pinch, atLeaf: 12, laterals: 'keep one' });
    expect(text).toContain(
      `just above its 12th leaf, ${shortDay(pinch.when.from)} to ${shortDay(pinch.when.to)};`,
    );
    expect(text).toContain('keep one and rub off the others');
    expect(pinchText({ ...pinch, atLeaf: 22 })).toContain('22nd leaf');
  });

  it('pinches no lower than the grower allows', () => {
    const low = planOf({ potVolumeL: 31, values: figValues({ pinchLowestLeaf: 9 }) }).pinch;
    expect(low === null || low.atLeaf >= 9).toBe(true);
  });

  it('is not given in rest, nor for a tree whose leaves stand as they were measured', () => {
    expect(planOf({ date: '2026-01-11' }).pinch).toBeNull();
    const leaves = { count: 9, midribM: 0.16, source: 'measured' } as const;
    const inLeaf = tree(
      trunk(),
      limb('east', 90),
      axis('s', 'east', {
        kind: 'shoot',
        grownIn: 2026,
        atM: 0.4,
        path: straight(0.4, 90, 60),
        foliage: leaves,
      }),
    );
    expect(planOf({ date: '2026-06-17' }, inLeaf).pinch).toBeNull();
  });

  it('is over when its last day is past, and never falls into the last weeks before frost', () => {
    expect(planOf({ date: '2026-10-13' }).pinch).toBeNull();
  });
});
