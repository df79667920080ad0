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
