import { describe, expect, it } from 'vitest';
import { outwardAt, pathLengthM, pathUpTo, pointAt, tangentAt } from '../../src/geometry/path.ts';
import { dot, length, type Vec3 } from '../../src/geometry/vec.ts';
import { bearingDeg, direction } from '../../src/geometry/world.ts';

const bent: readonly Vec3[] = [
  [0.1, 0.2, 0.3],
  [0.1, 0.5, 0.3],
  [0.5, 0.5, 0.3],
];

describe('paths of wood', () => {
  it('measures along the bends', () => {
    expect(pathLengthM(bent)).toBeCloseTo(0.7, 12);
    expect(pointAt(bent, 0.4)[0]).toBeCloseTo(0.2, 12);
    expect(tangentAt(bent, 0.29)).toEqual([0, 1, 0]);
    expect(tangentAt(bent, 0.31)).toEqual([1, 0, 0]);
  });

  it('holds to its ends beyond them', () => {
    expect(pointAt(bent, -1)).toEqual(bent[0]);
    expect(pointAt(bent, 9)).toEqual(bent[2]);
  });

  it('cuts to a length that is then its length', () => {
    for (const cutM of [0.05, 0.3, 0.52]) expect(pathLengthM(pathUpTo(bent, cutM))).toBeCloseTo(cutM, 12);
  });

  it('puts 0 degrees round level wood on its upper side and 90 clockwise as seen from the tip', () => {
    const eastward: readonly Vec3[] = [
      [0, 0, 0],
      [1, 0, 0],
    ];
    expect(outwardAt(eastward, 0.4, 0)[1]).toBeCloseTo(1, 12);
    // From the tip looking back west, north is at the right hand.
    expect(bearingDeg(outwardAt(eastward, 0.4, 90))).toBeCloseTo(0, 9);
  });

  it('puts 0 degrees round upright wood to the north and 90 to the east', () => {
    const upright: readonly Vec3[] = [
      [0, 0, 0],
      [0, 1, 0],
    ];
    expect(bearingDeg(outwardAt(upright, 0.4, 0))).toBeCloseTo(0, 9);
    expect(bearingDeg(outwardAt(upright, 0.4, 90))).toBeCloseTo(90, 9);
  });

  it('always points square out of the bark', () => {
    for (const bearing of [3, 111, 259]) {
      for (const elevation of [-80, 7, 64, 89.99, 90]) {
        const along = direction(bearing, elevation);
        const out = outwardAt([[0, 0, 0], along], 0.5, 201);
        expect(length(out)).toBeCloseTo(1, 12);
        expect(dot(out, along)).toBeCloseTo(0, 9);
      }
    }
  });
});
