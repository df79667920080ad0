import { describe, expect, it } from 'vitest';
import { random01 } from '../../src/geometry/random.ts';
import { roundedParts } from '../../src/plan/roundedParts.ts';

describe('roundedParts', () => {
  it('gives what is missing to those that lost most', () => {
    expect(roundedParts([0.74, 0.55], 1)).toEqual([0.7, 0.6]);
    expect(roundedParts([1.26, 0.05], 1)).toEqual([1.3, 0]);
    expect(roundedParts([2.5, 1.25, 0.75], 0)).toEqual([3, 1, 1]);
  });

  it('adds up to the rounded whole, no part off by a whole step (200 draws)', () => {
    for (let draw = 0; draw < 200; draw++) {
      const parts = [0, 1, 2].map((part) => 4 * random01(draw, part, 7) - 0.7);
      const rounded = roundedParts(parts, 1);
      const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);
      expect(sum(rounded), `draw ${draw}`).toBeCloseTo(Math.round(10 * sum(parts)) / 10, 9);
      rounded.forEach((part, i) => {
        expect(Math.abs(part - (parts[i] as number)), `draw ${draw}`).toBeLessThan(0.1);
      });
    }
  });
});
