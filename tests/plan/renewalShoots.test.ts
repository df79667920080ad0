/** A shoot near the base of each limb, to renew it from. */
import { describe, expect, it } from 'vitest';
import { planJob } from '../../src/plan/planJob.ts';
import { figValues } from '../../src/species/fig.ts';
import { bud, drain, limb, planInput, straight, tree, trunk } from './smallTree.ts';

const outer = (of: string) => [0.53, 0.66, 0.79].map((atM, i) => bud(`${of}${i}`, atM, 131 * i));
/** Two limbs that lie level, each with one bud low on it, in the shade of the trunk's crown. */
const sketch = tree(
  trunk({ buds: [bud('t0', 0.55, 40), bud('t1', 0.6, 190)] }),
  limb('South limb', 180, { path: straight(0.83, 180, 8), buds: [bud('low', 0.12), ...outer('s')] }),
  limb('North limb', 0, { path: straight(0.83, 0, 8), buds: outer('n') }),
);
const planWith = (renewalWithinFraction: number) =>
  drain(
    planJob(
      planInput(sketch, {
        values: figValues({ shootsPerScaffold: 3, shootPerWoodCm: 40, renewalWithinFraction }),
      }),
    ),
  ).plan;

describe('the shoot that a limb is renewed from', () => {
  const [wide, narrow] = [planWith(0.4), planWith(0.1)];
  const rubbed = ({ cuts }: typeof wide): string[] => cuts.map(({ target }) => target);

  it('stays, though the limb would bear more without it', () => {
    expect(rubbed(narrow)).toContain('low');
    expect(rubbed(wide)).not.toContain('low');
    expect(wide.score.plan.ripeFigs).toBeLessThan(narrow.score.plan.ripeFigs);
  });

  it('is missed where there is none, and that is told', () => {
    const told = (plan: typeof wide) => plan.remarks.filter((remark) => remark.includes('near the base'));
    expect(told(wide)).toEqual([
      'Nothing grows near the base of the north limb to renew it from one day. Should a shoot break there, it is worth keeping.',
    ]);
    expect(told(narrow)[0]).toContain('the south limb and the north limb to renew them from');
  });
});
