import { describe, expect, it } from 'vitest';
import {
  metresOf,
  pixelOf,
  ringPx,
  ringRadiusM,
  skyAt,
  skyPixelOf,
  widthPx,
} from '../../../../src/ui/sheets/place/round/frame.ts';
import { sunArcs } from '../../../../src/ui/sheets/place/round/sky.ts';
import { hiddenSky, movedPoint, nextPoint } from '../../../../src/ui/sheets/place/round/skyline.ts';

const skyline = [
  { bearingDeg: 310, heightDeg: 20 },
  { bearingDeg: 50, heightDeg: 8 },
  { bearingDeg: 130, heightDeg: 4 },
];

describe('the picture from above', () => {
  it('has north up and east at the right', () => {
    const [x, y] = pixelOf([2.5, 1.5], 5);
    expect([x, y]).toEqual([widthPx / 2 + ringPx / 2, widthPx / 2 - 0.3 * ringPx]);
    expect(metresOf(ringPx / 2, -0.3 * ringPx, 5, 0.05).map((m) => Math.round(m * 100) / 100)).toEqual([
      2.5, 1.5,
    ]);
  });

  it('holds all spots in the smallest round ring', () => {
    expect(ringRadiusM([[1.2, -4.9]], 'metric')).toBe(5);
    expect(ringRadiusM([[1.2, -5.1]], 'metric')).toBe(8);
    expect(ringRadiusM([[1.2, -4.9]], 'us')).toBeCloseTo(25 * 0.3048, 9);
    expect(ringRadiusM([], 'metric')).toBe(2);
    expect(ringRadiusM([[400, 0]], 'metric')).toBe(100);
  });
});

describe('the picture of the sky', () => {
  it('gives back bearing and height from its pixels', () => {
    for (const [bearing, height] of [
      [0.5, 3],
      [97, 41],
      [211, 77],
      [343, 12],
    ] as const) {
      const { bearingDeg, heightDeg } = skyAt(...skyPixelOf(bearing, height));
      expect(bearingDeg).toBeCloseTo(bearing, 9);
      expect(heightDeg).toBeCloseTo(height, 9);
    }
    expect(skyAt(0, 0).heightDeg).toBe(0);
  });

  it('shows the noon sun of midsummer as high as it stands, and the day chosen by its hours', () => {
    const arcs = sunArcs('2026-04-11', { latitudeDeg: 47.3, longitudeDeg: 8.1 });
    expect(arcs.map((arc) => arc.date)).toEqual(['21 Jun', '21 Dec', '11 Apr']);
    const highest = Math.max(...(arcs[0]?.line ?? []).map(([x, y]) => skyAt(x, y).heightDeg));
    expect(highest).toBeCloseTo(90 - 47.3 + 23.44, 1);
    const noon = arcs[2]?.hours.find(({ hour }) => hour === 12);
    expect(skyAt(...(noon?.at ?? [0, 0])).bearingDeg).toBeCloseTo(180, 1);
    expect(arcs[0]?.hours).toEqual([]);
    expect(sunArcs('2026-06-21', { latitudeDeg: -33, longitudeDeg: 18 })).toHaveLength(2);
  });
});

describe('a skyline', () => {
  it('gets its next point in the widest gap, on the line', () => {
    expect(nextPoint(skyline)).toEqual({ bearingDeg: 220, heightDeg: 12 });
    expect(nextPoint([{ bearingDeg: 200, heightDeg: 9 }])).toEqual({ bearingDeg: 20, heightDeg: 9 });
  });

  it('keeps a dragged point on the compass and below the top', () => {
    const moved = movedPoint({ reflectance: 0.1, points: skyline }, 1, -3.4, 93);
    expect(moved.points[1]).toEqual({ bearingDeg: 357, heightDeg: 85 });
    expect(moved.points[0]).toBe(skyline[0]);
  });

  it('hides the ring outside it', () => {
    const path = hiddenSky((bearing) => (bearing < 180 ? bearing / 10 : 25));
    expect(path.match(/M/g)).toHaveLength(2);
    const at = (bearing: number, height: number) =>
      skyPixelOf(bearing, height)
        .map((n) => n.toFixed(1))
        .join(' ');
    expect(path).toContain(at(310, 25));
    expect(path).toContain(at(90, 9));
    expect(path).toContain(at(210, 0));
  });
});
