import { describe, expect, it } from 'vitest';
import type { Pin } from '../../src/geometry/tree.ts';
import type { PlanInput } from '../../src/plan/input.ts';
import { planJob } from '../../src/plan/planJob.ts';
import { replanJob } from '../../src/plan/replan.ts';
import { bud, drain, limb, planInput, tree, trunk } from './smallTree.ts';

/** Three limbs of five buds each, too many by far. */
function crowded(pins: Readonly<Record<string, Pin>> = {}): PlanInput {
  const limbs = [17, 131, 252].map((bearing, l) =>
    limb(`limb-${l}`, bearing, {
      buds: [0, 1, 2, 3, 4].map((i) => {
        const id = `b-${l}-${i}`;
        return bud(id, 0.19 + 0.14 * i, 83 * i + 11 * l, pins[id] ?? null);
      }),
    }),
  );
  return planInput(tree(trunk(), ...limbs), { waves: 2, seed: 5, leafSeed: 5 });
}

const goes = ({ plan }: { plan: { cuts: readonly { target: string }[] } }): string[] =>
  plan.cuts.map(({ target }) => target).sort();

describe('replanJob', () => {
  const first = drain(planJob(crowded()));
  const gone = goes(first)[0] as string;
  const kept = first.made.work.choice.free
    .map(({ id }) => id)
    .find((id) => !goes(first).includes(id)) as string;

  it('tells the same plan where nothing has changed', () => {
    const again = drain(replanJob(first.made, crowded()));
    expect(goes(again)).toEqual(goes(first));
    expect(again.plan.score.plan.ripeFigs).toBeCloseTo(first.plan.score.plan.ripeFigs, 9);
    expect(again.isApproximate).toBe(false);
  });

  it('keeps what is pinned to be kept and takes what is pinned to go, and says that the canopy is another', () => {
    const again = drain(replanJob(first.made, crowded({ [gone]: 'keep', [kept]: 'remove' })));
    expect(goes(again)).not.toContain(gone);
    expect(goes(again)).toContain(kept);
    expect(again.plan.cuts.find(({ target }) => target === kept)?.reasons[0]?.rule).toBe('pinned');
    expect(again.isApproximate).toBe(true);
  });

  it('comes back to the first plan when the pins are taken away', () => {
    const pinned = drain(replanJob(first.made, crowded({ [gone]: 'keep' })));
    const back = drain(replanJob(pinned.made, crowded()));
    expect(goes(back)).toEqual(goes(first));
  });

  it('traces nothing', () => {
    const steps = replanJob(first.made, crowded({ [kept]: 'remove' }));
    for (let step = steps.next(); !step.done; step = steps.next()) {
      expect(step.value.errand).toBeUndefined();
    }
  });

  it('reads bold and gentle plans from the curve', () => {
    const takes = (boldness: 'gentle' | 'balanced' | 'bold') =>
      drain(replanJob(first.made, { ...crowded(), boldness })).plan.cuts.length;
    expect(takes('bold')).toBeGreaterThan(takes('balanced'));
    expect(takes('gentle')).toBeLessThanOrEqual(takes('balanced'));
  });

  it('keeps just as many shoots as a boldness was offered with, whatever was asked for in between', () => {
    const offered = (name: 'gentle' | 'balanced' | 'bold') =>
      first.plan.choice.find(({ reads }) => reads.includes(name))?.shoots as number;
    let last = first.made;
    for (const boldness of ['bold', 'gentle', 'bold', 'balanced'] as const) {
      const again = drain(replanJob(last, { ...crowded(), boldness }));
      expect(again.plan.score.plan.shootCount, boldness).toBe(offered(boldness));
      expect(again.plan.choice).toEqual(first.plan.choice);
      last = again.made;
    }
  });

  it('plans from scratch what differs in more than pins', () => {
    const other = { ...crowded(), leafSeed: 11 };
    const again = drain(replanJob(first.made, other));
    expect(again.plan).toEqual(drain(planJob(other)).plan);
    expect(again.isApproximate).toBe(false);
  });
});
