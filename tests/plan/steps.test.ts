import { describe, expect, it } from 'vitest';
import { planJob } from '../../src/plan/planJob.ts';
import { tryCuts } from '../../src/plan/trial.ts';
import { axis, bud, drain, limb, planInput, straight, tree, trunk } from './smallTree.ts';

const buds = (of: string, count: number) =>
  Array.from({ length: count }, (_, i) => bud(`${of}${i}`, 0.13 + 0.051 * i, 137.5 * i));
const sketch = tree(
  trunk(),
  limb('east', 90, { buds: buds('e', 11) }),
  limb('west', 270, { buds: buds('w', 9) }),
  limb('north', 5, { condition: 'dead' }),
  axis('from-soil', 'trunk', { kind: 'sucker', path: straight(0.7, 90, 62), buds: buds('s', 8) }),
);

describe('the steps of the work', () => {
  const { plan, trial } = drain(planJob(planInput(sketch)));

  it('say nothing of worlds where none were asked for', () => {
    expect(plan.cuts.find(({ target }) => target === 'from-soil')?.standsIn).toBeNull();
  });

  it('come in the order of work, each with its own cuts', () => {
    expect(plan.steps.map(({ step }) => step)).toEqual([
      'before the cuts',
      'dead and sick wood',
      'suckers',
      'crowding',
    ]);
    expect(plan.steps.reduce((sum, { cuts }) => sum + cuts, 0)).toBe(plan.cuts.length);
  });

  it('show after each what is to be had when only the cuts so far are made', () => {
    const firstTwo = plan.cuts.filter(({ target }) => target === 'north' || target === 'from-soil');
    const { score } = tryCuts(
      trial,
      firstTwo.map(({ id }) => id),
    );
    expect(plan.steps[2]).toMatchObject({ ripeFigs: score.ripeFigs, meanLight: score.meanLight });
  });

  it('end at the score of the plan', () => {
    const { ripeFigs, meanLight } = plan.score.plan;
    expect(plan.steps.at(-1)).toMatchObject({ ripeFigs, meanLight });
  });

  it('show that a dead limb over living shoots took light from them', () => {
    const [before, after] = plan.steps;
    expect(after?.meanLight).toBeGreaterThan(before?.meanLight as number);
  });
});
