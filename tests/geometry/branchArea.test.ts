import { describe, expect, it } from 'vitest';
import { joinedDiameterM, taperFor } from '../../src/geometry/branchArea.ts';

describe('the rule of branch areas', () => {
  it('keeps the area of the section with the power 2: 48 pieces of 50 mm are as one of 346 mm', () => {
    // Within the rounding of the printed 346 mm (BS 3998 advice note of a council on tree work: many small cuts against one large).
    expect(joinedDiameterM(Array<number>(48).fill(0.05), 2)).toBeCloseTo(0.346, 3);
  });

  it('gives 3, 4, 5 by Pythagoras and nothing for nothing', () => {
    expect(joinedDiameterM([0.03, 0.04], 2)).toBeCloseTo(0.05, 12);
    expect(joinedDiameterM([], 2)).toBe(0);
  });

  it('makes thicker wood of a smaller power', () => {
    const carried = [0.013, 0.017, 0.009];
    expect(joinedDiameterM(carried, 1.8)).toBeGreaterThan(joinedDiameterM(carried, 2));
    expect(joinedDiameterM(carried, 2.3)).toBeLessThan(joinedDiameterM(carried, 2));
  });
});

describe('a straight taper', () => {
  it('is nowhere thinner than what it carries there', () => {
    const carried = [
      { share: 0.31, diameterM: 0.012 },
      { share: 0.83, diameterM: 0.021 },
      { share: 1, diameterM: 0.011 },
    ];
    const { baseM, tipM } = taperFor(carried, 0.004, 0.005, 2);
    expect(baseM).toBeCloseTo(Math.hypot(0.012, 0.021, 0.011), 12);
    const slack = carried.map(({ share, diameterM }) => baseM + (tipM - baseM) * share - diameterM);
    for (const left of slack) expect(left).toBeGreaterThanOrEqual(-1e-12);
    expect(Math.min(...slack)).toBeCloseTo(0, 12);
  });

  it('keeps to the thinnest tip and base that are asked for', () => {
    expect(taperFor([], 0.019, 0.006, 2)).toEqual({ baseM: 0.019, tipM: 0.006 });
    expect(taperFor([], 0.001, 0.006, 2)).toEqual({ baseM: 0.006, tipM: 0.006 });
  });
});
