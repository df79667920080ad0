import { describe, expect, it } from 'vitest';
import { direction } from '../../../src/geometry/world.ts';
import { hiddenBy, horizonOf } from '../../../src/light/sky/horizon.ts';
import { horizonHeight } from '../../../src/ui/scene/horizonHeight.ts';
import { roofTriangles } from '../../../src/ui/scene/roof.ts';
import { slatsOf } from '../../../src/ui/scene/slats.ts';

describe('a fence', () => {
  it.each([
    [3.7, 0.35],
    [0.9, 0.8],
    [61, 0.5],
    [2.2, 0],
  ])('of %d m is open by its share %d', (lengthM, open) => {
    const { widthM, atM } = slatsOf(lengthM, open);
    expect(1 - (widthM * atM.length) / lengthM).toBeCloseTo(open, 9);
    expect((atM.at(-1) ?? 0) + (atM[0] ?? 0)).toBeCloseTo(0, 9);
  });
});

describe('a gable roof', () => {
  it('closes the block from its walls to its ridge', () => {
    const corners = roofTriangles([4.2, 2.6, 3.1], 3.9);
    expect(corners).toHaveLength(18);
    const heights = corners.map(([, y]) => (y ?? 0) + 2.6 / 2);
    expect(Math.min(...heights)).toBeCloseTo(2.6, 9);
    expect(Math.max(...heights)).toBeCloseTo(3.9, 9);
    // The volume under the roof is half of depth times rise times length.
    let volume = 0;
    for (let i = 0; i < corners.length; i += 3) {
      const [a, b, c] = corners.slice(i, i + 3).map(([x = 0, y = 0, z = 0]) => [x, y - 1.3, z] as const);
      if (a === undefined || b === undefined || c === undefined)
        throw new Error('a triangle has three corners');
      const cross = [
        b[1] * c[2] - b[2] * c[1],
        b[2] * c[0] - b[0] * c[2],
        b[0] * c[1] - b[1] * c[0],
      ] as const;
      volume += (a[0] * cross[0] + a[1] * cross[1] + a[2] * cross[2]) / 6;
    }
    expect(volume).toBeCloseTo((4.2 * 3.1 * 1.3) / 2, 9);
  });
});

describe('the horizon that is drawn', () => {
  const site = {
    skyline: {
      reflectance: 0.1,
      points: [
        { bearingDeg: 300, heightDeg: 17 },
        { bearingDeg: 40, heightDeg: 3 },
        { bearingDeg: 150, heightDeg: 8 },
      ],
    },
    slope: { slopeDeg: 13, fallsToDeg: 205 },
  };

  it('is where the light meets something', () => {
    const horizon = horizonOf(site);
    const height = horizonHeight(site);
    if (horizon === null || height === null) throw new Error('there is a horizon');
    const bearings = Array.from({ length: 51 }, (_, i) => 3 + 7 * i);
    const metAt = (bearing: number, offDeg: number) =>
      hiddenBy(horizon, direction(bearing, height(bearing) + offDeg));
    expect(bearings.map((bearing) => metAt(bearing, 0.01))).toEqual(bearings.map(() => null));
    const raised = bearings.filter((bearing) => height(bearing) > 0.01);
    expect(raised.length).toBeGreaterThan(40);
    expect(raised.map((bearing) => metAt(bearing, -0.01))).not.toContain(null);
  });

  it('is none on level ground under open sky', () => {
    expect(horizonHeight({})).toBeNull();
  });
});
