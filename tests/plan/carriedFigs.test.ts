import { describe, expect, it } from 'vitest';
import type { Axis } from '../../src/geometry/tree.ts';
import { planJob } from '../../src/plan/planJob.ts';
import { axis, drain, limb, planInput, straight, tree, trunk } from './smallTree.ts';

const shoot = (id: string, on: string, part: Partial<Axis> = {}): Axis =>
  axis(id, on, {
    kind: 'shoot',
    atM: 0.35,
    path: straight(0.3, 40, 60),
    foliage: { count: 6, midribM: 0.19, source: 'measured' },
    ...part,
  });

/** Two limbs with a shoot each; the eastern limb is sick, so that it goes with its shoot. */
const remarksOf = (east: Partial<Axis>, west: Partial<Axis>): string => {
  const of = tree(
    trunk(),
    limb('east', 90, { condition: 'diseased' }),
    shoot('on east', 'east', east),
    limb('west', 270),
    shoot('on west', 'west', west),
  );
  const { plan } = drain(planJob(planInput(of, { waves: 2, worlds: 0 })));
  return plan.remarks.filter((remark) => remark.includes('carried figs')).join(' ');
};

describe('figs that hang on what goes', () => {
  it('are told, with the branch that goes below them', () => {
    expect(remarksOf({ bearsFigs: true }, { bearsFigs: true })).toMatch(/go with the cuts: .*on east\./);
    expect(remarksOf({ bearsFigs: true }, { bearsFigs: true })).not.toContain('on west');
  });

  it('are no matter where they stay, where there are none, and where nothing was told', () => {
    expect(remarksOf({}, { bearsFigs: true })).toBe('');
    expect(remarksOf({ bearsFigs: false }, {})).toBe('');
  });
});
