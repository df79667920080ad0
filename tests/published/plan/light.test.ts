/** The light that fruiting takes, against published shade trials. None of them is on fig: directions, not sizes. */
import { describe, expect, it } from 'vitest';
import { lightCurve } from '../../../src/plan/lightResponse.ts';
import { figPlan } from '../../../src/species/fig/plan.ts';
import { figValues } from '../../../src/species/fig.ts';

const response = lightCurve(figValues({}));

describe('fruiting light', () => {
  it('stands for apple flowers at 25-35 % of full sun (orchard manual series, Australia; extension talks 2006)', () => {
    // The band is the one those sources print; the fig's half is taken from it by analogy.
    expect(figPlan.fruitHalfAtFraction.value).toBeGreaterThanOrEqual(0.25);
    expect(figPlan.fruitHalfAtFraction.value).toBeLessThanOrEqual(0.35);
  });

  it('is full no lower than where fig leaves saturate: 40 klux of 108, Amano, Hino, Daito and Kuraoka 1972', () => {
    // 40 klux (30 to 50) of about 108 klux full sun; above that light adds little carbon to the leaf.
    expect(figPlan.fruitFullFromFraction.value).toBeGreaterThanOrEqual(40 / 108);
    expect(figPlan.fruitFullFromFraction.value).toBeLessThanOrEqual(50 / 108);
  });

  it('costs apples return bloom at 37, 25 and 11 % of daylight, the less light the more (Jackson and Palmer 1977)', () => {
    // Sizes were not seen in the abstract, only that each level lost and that loss carried over.
    const [at37, at25, at11] = [0.37, 0.25, 0.11].map(response);
    expect(at37).toBeLessThan(1);
    expect(at25).toBeLessThan(at37 as number);
    expect(at11).toBeLessThan(at25 as number);
  });

  it('leaves next to nothing of an apple crop under shade all day (Miller, Hott and Tworkoski 2015)', () => {
    // 7.8 kg of 201.6 in four years, 4 %; the shade cloth is taken to be the 73 % of an earlier trial of the group, so 27 % light.
    // The model keeps a half there: it is far kinder than that trial. Held so that nobody takes it for harsher than it is.
    expect(response(0.27)).toBeGreaterThan(7.8 / 201.6);
    expect(response(0.12)).toBeLessThan(7.8 / 201.6);
  });
});

describe('shade for half of the day and for all of it (apple, Miller, Hott and Tworkoski 2015: kg a tree in four years)', () => {
  // Printed: 201.6 without shade, 110.6 shaded after noon, 72.5 before noon, 7.8 all day. The cloth is taken to be the 73 % of an earlier
  // trial of the group. Half the day is taken for half of the light: the model tells morning from afternoon only by the sun.
  const printed = { none: 201.6, halfDay: (110.6 + 72.5) / 2, allDay: 7.8 };
  /** Figs set on nodes that stand in all lights from none to open sky alike. */
  const crop = (lightLeft: number): number => {
    const nodes = Array.from({ length: 200 }, (_, i) => response(lightLeft * ((i + 0.5) / 200)));
    return nodes.reduce((sum, figs) => sum + figs, 0) / nodes.length;
  };
  const ours = { none: crop(1), halfDay: crop(1 - 0.73 / 2), allDay: crop(1 - 0.73) };

  it('takes the more of the crop the longer it lasts', () => {
    expect(ours.halfDay).toBeLessThan(ours.none);
    expect(ours.allDay).toBeLessThan(ours.halfDay);
  });

  it('takes less here than it took there: 22 % for 55 %, 86 % for 96 %', () => {
    // Written down in docs/model.md, 8.1; the trial counts four years, in which shaded trees form fewer buds each year.
    const lost = (of: typeof ours, shade: 'halfDay' | 'allDay'): number => 1 - of[shade] / of.none;
    expect(lost(printed, 'halfDay')).toBeCloseTo(0.55, 2);
    expect(lost(ours, 'halfDay')).toBeCloseTo(0.22, 2);
    expect(lost(printed, 'allDay')).toBeCloseTo(0.96, 2);
    expect(lost(ours, 'allDay')).toBeCloseTo(0.86, 2);
  });
});
