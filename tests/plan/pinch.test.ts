import { describe, expect, it } from 'vitest';
import { harvestByWeek, peakWeek } from '../../src/plan/harvest.ts';
import { type NodeFigs, type PinchModel, pinchHeatGdd8, ripeningFigs } from '../../src/plan/pinch.ts';
import { ripeChance } from '../../src/plan/ripening.ts';
import { workYear } from '../../src/plan/windows.ts';
import { planInput, tree, trunk, values } from './smallTree.ts';

const model = (held = Number.POSITIVE_INFINITY): PinchModel => ({
  values,
  crop: { held, lateAtTwiceGdd8: values.overloadLateGdd8 },
  figToRipeGdd8: 1175,
  breakGdd8: 113,
});
/** A shoot of 13 leaves, two of them blind. */
const shoot = (figs = 0.7, leaves = 13): NodeFigs[] =>
  Array.from({ length: leaves - 2 }, (_, i) => ({ node: i + 3, bearing: i + 1, leaves, figs }));
const appears = (
  nodes: NodeFigs[],
  ...[pinch, of = model()]: [Parameters<typeof ripeningFigs>[1], PinchModel?]
) => ripeningFigs(nodes, pinch, of).map(({ ripeGdd8 }) => ripeGdd8 - of.figToRipeGdd8);

describe('a pinched shoot', () => {
  const first = values.firstFigHeatGdd8;
  const step = values.phyllochronGdd8;

  it('sets the figs below the pinch at once, those that were there already keep their day', () => {
    const pinched = appears(shoot(), { atLeaf: 8, laterals: 'rub off all' });
    const pinchedAt = pinchHeatGdd8(8, values);
    expect(pinched).toHaveLength(6);
    expect(pinched.slice(0, 3)).toEqual([first, first + step, first + 2 * step]);
    expect(pinched.slice(3)).toEqual([pinchedAt, pinchedAt, pinchedAt]);
  });

  it('sets them at once where it comes before the first figs of any shoot would be seen', () => {
    const pinchedAt = pinchHeatGdd8(4, values);
    expect(pinchedAt).toBeLessThan(first);
    expect(appears(shoot(), { atLeaf: 4, laterals: 'rub off all' })).toEqual([pinchedAt, pinchedAt]);
  });

  it('bears the rest on a lateral when one is kept, later by the time it takes to break', () => {
    const own = appears(shoot(), null);
    const pinched = appears(shoot(), { atLeaf: 5, laterals: 'keep one' });
    expect(pinched.slice(3)).toEqual(own.slice(3).map((gdd8) => gdd8 + 113));
  });

  it('is left alone when it has no leaf above the pinch', () => {
    const short = shoot(0.7, 6);
    expect(appears(short, { atLeaf: 6, laterals: 'rub off all' })).toEqual(appears(short, null));
  });

  it('ripens its figs sooner, and keeps more of them, where the pot could not have fed all', () => {
    const small = model(3.1);
    const [whole, pinched] = [null, { atLeaf: 6, laterals: 'rub off all' } as const].map((pinch) =>
      ripeningFigs(shoot(), pinch, small),
    );
    expect(pinched?.[0]?.ripeGdd8).toBeLessThan(whole?.[0]?.ripeGdd8 as number);
    expect(pinched?.[0]?.figs).toBeGreaterThan(whole?.[0]?.figs as number);
  });
});

describe('the harvest by week', () => {
  const { season } = workYear(planInput(tree(trunk())));

  it('adds up to the figs that ripen before the season ends', () => {
    const weeks = harvestByWeek(ripeningFigs(shoot(), null, model()), season, values);
    const chance = ripeChance(values, 'mid', season);
    const expected = shoot().reduce((sum, { bearing, figs }) => sum + figs * chance(bearing), 0);
    expect(weeks.reduce((sum, { figs }) => sum + figs, 0)).toBeCloseTo(expected, 6);
    expect(weeks[0]?.from).toBe(season.budBreakOn);
    expect(weeks.every(({ from }) => from < season.ripeningEndsOn)).toBe(true);
  });

  it('peaks in the week in which figs of one day ripen', () => {
    const weeks = harvestByWeek([{ figs: 3.3, ripeGdd8: 1710 }], season, values);
    const peak = peakWeek(weeks) as string;
    expect(Math.abs(season.heat.sumAt(peak) - 1710)).toBeLessThan(130);
    expect(peakWeek(harvestByWeek([], season, values))).toBeNull();
  });
});
