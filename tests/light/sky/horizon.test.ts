import { describe, expect, it } from 'vitest';
import { direction } from '../../../src/geometry/world.ts';
import { hiddenBy, horizonOf, skylineHeightDeg } from '../../../src/light/sky/horizon.ts';

const points = [
  { bearingDeg: 310, heightDeg: 4 },
  { bearingDeg: 50, heightDeg: 14 },
  { bearingDeg: 130, heightDeg: 0 },
];
const hills = { skyline: { reflectance: 0.2, points } };

describe('a skyline', () => {
  it('runs straight from bearing to bearing, also across north, whatever the order of its points', () => {
    const skyline = horizonOf(hills)?.skyline ?? [];
    const at = [310, 0, 30, 50, 90, 130, 220, 360].map((bearing) => skylineHeightDeg(skyline, bearing));
    [4, 9, 12, 14, 7, 0, 2, 9].forEach((height, i) => {
      expect(at[i]).toBeCloseTo(height, 9);
    });
  });

  it('is level all round when one bearing is given, and nothing when all heights are 0', () => {
    const one = horizonOf({ skyline: { reflectance: 0, points: [{ bearingDeg: 77, heightDeg: 11 }] } });
    for (const bearing of [0, 77, 200]) expect(skylineHeightDeg(one?.skyline ?? [], bearing)).toBe(11);
    expect(horizonOf({ skyline: { reflectance: 0, points: [{ bearingDeg: 77, heightDeg: 0 }] } })).toBeNull();
    expect(horizonOf({})).toBeNull();
  });

  it('hides what lies below it and nothing above', () => {
    const horizon = horizonOf(hills);
    if (horizon === null) throw new Error('no horizon');
    expect(hiddenBy(horizon, direction(30, 11.9))).toBe('skyline');
    expect(hiddenBy(horizon, direction(30, 12.1))).toBeNull();
    expect(hiddenBy(horizon, direction(131, 0.2))).toBeNull();
  });

  it('throws on bearings that are none', () => {
    expect(() =>
      horizonOf({ skyline: { reflectance: 0, points: [{ bearingDeg: Number.NaN, heightDeg: 3 }] } }),
    ).toThrow('horizonOf');
  });
});

describe('a slope', () => {
  const horizon = horizonOf({ ...hills, slope: { slopeDeg: 20, fallsToDeg: 180 } });
  if (horizon === null) throw new Error('no horizon');

  it('hides the sky uphill up to its own steepness, less to the sides, nothing downhill', () => {
    expect(hiddenBy(horizon, direction(0, 19.9))).toBe('slope');
    expect(hiddenBy(horizon, direction(0, 20.1))).toBeNull();
    // tan of the height it hides is the slope's times the cosine of the turn from straight uphill.
    const aside = (Math.atan(Math.tan(Math.PI / 9) / 2) * 180) / Math.PI;
    expect(hiddenBy(horizon, direction(300, aside - 0.1))).toBe('slope');
    expect(hiddenBy(horizon, direction(300, aside + 0.1))).toBeNull();
    expect(hiddenBy(horizon, direction(180, 1))).toBe('skyline');
    expect(hiddenBy(horizon, direction(180, 1.3))).toBeNull();
  });

  it('stands before the skyline where both hide the sky', () => {
    expect(hiddenBy(horizon, direction(20, 5))).toBe('slope');
    expect(hiddenBy(horizon, direction(80, 8))).toBe('skyline');
  });
});
