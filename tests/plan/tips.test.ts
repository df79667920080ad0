import { describe, expect, it } from 'vitest';
import { applyCuts } from '../../src/plan/applyCuts.ts';
import { ruleContext } from '../../src/plan/ruleContext.ts';
import { proposeTips } from '../../src/plan/tips.ts';
import { figValues } from '../../src/species/fig.ts';
import { axis, bud, limb, stance, straight, tree, trunk } from './smallTree.ts';

const buds = [0.11, 0.19, 0.26, 0.32, 0.37, 0.4].map((atM, i) => bud(`b${i}`, atM, 137.5 * i));
/** A limb with last year's lateral of 42 cm that ends 1.46 m above the soil. */
const sketch = (rest = {}) =>
  tree(
    trunk(),
    limb('east', 90),
    axis('last', 'east', { atM: 0.79, path: straight(0.42, 90, 74), buds, ...rest }),
  );
const tipsOf = (of: ReturnType<typeof sketch>, settings: Record<string, number> = {}, bears = true) =>
  proposeTips(ruleContext(of, stance, figValues(settings)), 2026, bears);
const topM = 0.47 + 0.79 * Math.sin((38 * Math.PI) / 180) + 0.42 * Math.sin((74 * Math.PI) / 180);

describe('proposeTips', () => {
  it('cuts nothing when nothing needs it, and says so', () => {
    expect(tipsOf(sketch())).toEqual({ cuts: [], remarks: [{ about: 'no tip' }] });
  });

  it('brings a tip back within the height kept, above a bud, with what it costs', () => {
    const { cuts } = tipsOf(sketch(), { keptHeightM: topM - 0.031 });
    expect(cuts).toHaveLength(1);
    const [cut] = cuts;
    expect(cut?.kind).toBe('tip');
    // The tip must lose 3.1 cm of height, 3.3 cm of wood: just above the bud at 37 cm.
    expect(cut?.atM).toBeCloseTo(0.38, 9);
    const reason = cut?.reasons[0];
    if (reason?.rule !== 'tip') throw new Error('no tip');
    expect(reason.lengthM).toBeCloseTo(0.04, 9);
    expect([reason.nodes, reason.why]).toEqual([1, 'too high']);
    expect(reason.firstCropFigsLost).toBeCloseTo(0.4, 9);
    const after = applyCuts(sketch(), cuts);
    expect(tipsOf(after, { keptHeightM: topM - 0.031 }).cuts).toEqual([]);
  });

  it('costs no first crop on a kind that bears none', () => {
    const [cut] = tipsOf(sketch(), { keptHeightM: topM - 0.031 }, false).cuts;
    expect(cut?.reasons[0]).toMatchObject({ firstCropFigsLost: 0 });
  });

  it('never takes more than ten centimetres: what stands out farther is told', () => {
    const { cuts, remarks } = tipsOf(sketch(), { keptHeightM: topM - 0.17 });
    expect(cuts).toEqual([]);
    expect(remarks[0]).toMatchObject({ about: 'too high', branch: 'last' });
  });

  it('brings a tip back within the width kept', () => {
    const reachM = 0.79 * Math.cos((38 * Math.PI) / 180) + 0.42 * Math.cos((74 * Math.PI) / 180);
    const [cut] = tipsOf(sketch(), { keptSpreadM: 2 * (reachM - 0.011) }).cuts;
    expect(cut?.reasons[0]).toMatchObject({ why: 'too wide' });
    expect(cut?.atM).toBeGreaterThanOrEqual(0.32);
  });

  it('takes the end bud of long bare wood that wants a lateral, and of no branched wood', () => {
    const long = { path: straight(0.78, 90, 40), buds: [bud('x', 0.6), bud('y', 0.73), bud('z', 0.77)] };
    const [cut] = tipsOf(sketch(long)).cuts;
    expect(cut?.reasons[0]).toMatchObject({ why: 'wants a lateral', nodes: 1 });
    expect(cut?.atM).toBeCloseTo(0.74, 9);
    const branched = tree(
      ...sketch(long).axes,
      axis('side', 'last', { atM: 0.5, path: straight(0.3, 0, 40) }),
    );
    expect(tipsOf(branched).cuts).toEqual([]);
  });

  it('leaves pinned wood and pinned buds alone', () => {
    const settings = { keptHeightM: topM - 0.031 };
    expect(tipsOf(sketch({ pin: 'keep' }), settings).cuts).toEqual([]);
    const pinned = buds.map((b) => (b.id === 'b5' ? { ...b, pin: 'keep' as const } : b));
    expect(tipsOf(sketch({ buds: pinned }), settings).cuts).toEqual([]);
  });
});
