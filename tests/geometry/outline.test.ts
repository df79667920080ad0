import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fan,
  isInside,
  type Outline,
  outlineArea,
  outlineBox,
  signedArea,
} from '../../src/geometry/outline.ts';

const arrow: Outline = [
  [0, 0],
  [3, -2],
  [2, 0],
  [3, 2.5],
];

/** Star-shaped round the origin: radius by angle. */
const star = fc
  .array(fc.double({ min: 0.2, max: 3, noNaN: true }), { minLength: 3, maxLength: 30 })
  .map(
    (radii): Outline =>
      radii.map((r, i) => [
        r * Math.cos((2 * Math.PI * i) / radii.length),
        r * Math.sin((2 * Math.PI * i) / radii.length),
      ]),
  );

describe('outlines', () => {
  it('have the area of the shoelace formula, signed by their turn', () => {
    expect(signedArea(arrow)).toBeCloseTo(4.5, 12);
    expect(signedArea(arrow.toReversed())).toBeCloseTo(-4.5, 12);
    expect(outlineArea(arrow.toReversed())).toBeCloseTo(4.5, 12);
  });

  it('tell inside from outside round a notch', () => {
    expect(isInside(arrow, 1.7, 0.2)).toBe(true);
    expect(isInside(arrow, 2.4, 0.1)).toBe(false);
    expect(isInside(arrow, 2.7, 2)).toBe(true);
    expect(isInside(arrow, -0.1, 0)).toBe(false);
  });

  it('share every point of a common edge between two neighbours, never both, never none', () => {
    const left: Outline = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ];
    const right: Outline = [
      [1, 0],
      [2, 0],
      [2, 1],
      [1, 1],
    ];
    for (const v of [0.1, 0.25, 0.7]) expect(isInside(left, 1, v)).not.toBe(isInside(right, 1, v));
  });

  it('fit their box', () => {
    expect(outlineBox(arrow)).toEqual({ minU: 0, minV: -2, maxU: 3, maxV: 2.5 });
    expect(() => outlineBox([])).toThrow('outlineBox: an outline needs points');
  });

  it('fall into a fan of triangles of the same total area when star-shaped', () => {
    fc.assert(
      fc.property(star, (outline) => {
        const total = fan(outline, [0, 0]).reduce((sum, triangle) => sum + outlineArea(triangle), 0);
        expect(total).toBeCloseTo(outlineArea(outline), 9);
      }),
      { seed: 7001, numRuns: 60 },
    );
  });

  it('refuse a fan from a hub that does not see every edge', () => {
    expect(() => fan(arrow, [2.8, 2])).toThrow(/^fan: the edge at/);
    expect(fan(arrow, [1, 0])).toHaveLength(4);
  });
});
