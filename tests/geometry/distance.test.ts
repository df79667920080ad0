import { describe, expect, it } from 'vitest';
import { closestApproach } from '../../src/geometry/distance.ts';
import { pointAt } from '../../src/geometry/path.ts';
import { random01 } from '../../src/geometry/random.ts';
import { distance, type Vec3 } from '../../src/geometry/vec.ts';

describe('closest approach of two paths', () => {
  it('finds the gap of two wires that cross at different heights', () => {
    const found = closestApproach(
      [
        [-1, 0.3, 0],
        [1, 0.3, 0],
      ],
      [
        [0.25, 0.42, -2],
        [0.25, 0.42, 1],
      ],
    );
    expect(found.distanceM).toBeCloseTo(0.12, 12);
    expect(found.alongFirstM).toBeCloseTo(1.25, 12);
    expect(found.alongSecondM).toBeCloseTo(2, 12);
  });

  it('handles parallel, touching and point-like stretches', () => {
    expect(
      closestApproach(
        [
          [0, 0, 0],
          [1, 0, 0],
        ],
        [
          [0.2, 0, 0.5],
          [0.9, 0, 0.5],
        ],
      ).distanceM,
    ).toBeCloseTo(0.5, 12);
    expect(
      closestApproach(
        [
          [0, 0, 0],
          [1, 0, 0],
        ],
        [
          [1, 0, 0],
          [2, 1, 0],
        ],
      ).distanceM,
    ).toBe(0);
    expect(
      closestApproach(
        [
          [0, 0, 0],
          [0, 0, 0],
        ],
        [
          [3, 4, 0],
          [3, 4, 0],
        ],
      ).distanceM,
    ).toBe(5);
  });

  it.each([11, 12, 13])('is never beaten by points tried along both paths (seed %i)', (seed) => {
    const path = (k: number): Vec3[] =>
      [0, 1, 2].map((i) => [0, 1, 2].map((c) => random01(seed, k, i, c)) as unknown as Vec3);
    const [first, second] = [path(1), path(2)];
    const found = closestApproach(first, second);
    let tried = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= 300; i++) {
      for (let j = 0; j <= 300; j++) {
        tried = Math.min(tried, distance(pointAt(first, i * 0.008), pointAt(second, j * 0.008)));
      }
    }
    expect(found.distanceM).toBeLessThanOrEqual(tried + 1e-12);
    expect(found.distanceM).toBeGreaterThan(tried - 0.012);
  });
});
