import { describe, expect, it } from 'vitest';
import { random01 } from '../../src/geometry/random.ts';
import { outlineArea, outlinePicker } from '../../src/growth/outline.ts';
import { figLeafOutline } from '../../src/species/fig/leafOutline.ts';

const kite = [
  [3, 0],
  [0, 1.5],
  [-1, 0],
  [0, -0.5],
] as const;

describe('outlineArea', () => {
  it('is half the product of the diagonals for a kite', () => {
    expect(outlineArea(kite)).toBeCloseTo((4 * 2) / 2, 12);
  });
});

describe('outlinePicker', () => {
  it('spreads points evenly over the outline (seed 71)', () => {
    const pick = outlinePicker(kite);
    const points = Array.from({ length: 20_000 }, (_, i) =>
      pick(random01(71, i, 0), random01(71, i, 1), random01(71, i, 2)),
    );
    // Share of the kite's area to the right of the cross diagonal: 3 / 4. Four standard errors are 0.012.
    const right = points.filter(([u]) => u > 0).length / points.length;
    expect(Math.abs(right - 0.75)).toBeLessThan(0.0125);
    // Centroid across: three quarters of the area above with mean 0.5, one quarter below with mean -1/6.
    const mean = points.reduce((sum, [, v]) => sum + v, 0) / points.length;
    expect(Math.abs(mean - (0.75 * 0.5 - 0.25 / 6))).toBeLessThan(0.012);
  });

  it('never leaves a lobed outline (seed 72)', () => {
    const pick = outlinePicker(figLeafOutline);
    for (let i = 0; i < 3000; i++) {
      const [u, v] = pick(random01(72, i, 0), random01(72, i, 1), random01(72, i, 2));
      expect(isInside(u, v)).toBe(true);
    }
  });

  it('refuses fewer than three corners', () => {
    expect(() =>
      outlinePicker([
        [1, 0],
        [0, 1],
      ]),
    ).toThrow('outlinePicker: an outline needs three corners, got 2');
  });
});

/** Crossing number test, apart from the fan: Haines 1994, Graphics Gems IV, "Point in polygon strategies". */
function isInside(u: number, v: number): boolean {
  let inside = false;
  figLeafOutline.forEach(([u1, v1], i) => {
    const [u2, v2] = figLeafOutline[(i + 1) % figLeafOutline.length] ?? [0, 0];
    if (v1 > v !== v2 > v && u < ((u2 - u1) * (v - v1)) / (v2 - v1) + u1) inside = !inside;
  });
  return inside;
}
