import { assert, double, property } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leavesOfLength, midribOfShootM } from '../../src/growth/leavesOfLength.ts';
import { shootForm } from '../../src/growth/shootForm.ts';
import { figValues } from '../../src/species/fig.ts';

const values = figValues({});
const vigours = double({ min: values.vigourLowest, max: values.vigourHighest, noNaN: true });
const heats = double({ min: 50, max: 2400, noNaN: true });

describe('the leaves of a shoot whose length alone is known', () => {
  it('are those of the bud that grew it, on any day (seed 5203)', () => {
    assert(
      property(vigours, heats, (vigour, heat) => {
        const grown = shootForm(vigour, heat, values);
        expect(leavesOfLength(grown.lengthM, heat, values)).toBe(grown.leafCount);
      }),
      { seed: 5203 },
    );
  });

  it('are 6 to 18 on shoots of 15 to 100 cm, as practice has it in pots', () => {
    const counts = [0.15, 0.23, 0.41, 0.67, 1].map((m) =>
      leavesOfLength(m, Number.POSITIVE_INFINITY, values),
    );
    expect(counts).toEqual(counts.toSorted((a, b) => a - b));
    expect(counts[0]).toBeGreaterThanOrEqual(6);
    expect(counts.at(-1)).toBeLessThanOrEqual(18);
  });

  it('are never more than the warmth has unfolded', () => {
    // 465 degree-days: leaf-out at 45 and one leaf for each 75 since.
    expect(leavesOfLength(1.3, 465, values)).toBe(6);
    expect(leavesOfLength(0.02, 465, values)).toBeLessThanOrEqual(6);
  });

  it('are larger on the stronger shoot, within the range of the blades that were measured', () => {
    const weak = midribOfShootM(0.13, 9, values);
    const strong = midribOfShootM(0.97, 14, values);
    expect(weak).toBeGreaterThanOrEqual(0.1);
    expect(strong).toBeGreaterThan(weak);
    expect(strong).toBeLessThanOrEqual(0.3);
    expect(() => leavesOfLength(0, 465, values)).toThrow(/leavesOfLength/);
  });
});
