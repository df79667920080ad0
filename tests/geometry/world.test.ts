import { describe, expect, it } from 'vitest';
import { angleBetweenDeg, type Vec3 } from '../../src/geometry/vec.ts';
import {
  bearingDeg,
  direction,
  elevationDeg,
  fromUprightDeg,
  turnAboutUpright,
  turnDeg,
  wind,
  wrapDeg,
} from '../../src/geometry/world.ts';

const close = (a: Vec3, b: Vec3) => {
  for (let i = 0; i < 3; i++) expect(a[i]).toBeCloseTo(b[i] as number, 12);
};

describe('world frame: x east, y up, z south', () => {
  it('has north along -z, east along +x, south along +z, west along -x', () => {
    close(direction(0, 0), [0, 0, -1]);
    close(direction(90, 0), [1, 0, 0]);
    close(direction(180, 0), [0, 0, 1]);
    close(direction(270, 0), [-1, 0, 0]);
    close(direction(123, 90), [0, 1, 0]);
  });

  it('gives back the bearing and elevation a direction was made from', () => {
    for (const bearing of [0, 17, 93, 181, 266, 359]) {
      for (const elevation of [-71, -3, 0, 29, 88]) {
        const v = direction(bearing, elevation);
        expect(bearingDeg(v)).toBeCloseTo(bearing, 9);
        expect(elevationDeg(v)).toBeCloseTo(elevation, 9);
        expect(fromUprightDeg(v)).toBeCloseTo(90 - elevation, 9);
      }
    }
  });

  it('turns clockwise as seen from above: north becomes east', () => {
    close(turnAboutUpright([0, 0.7, -1], 90), [1, 0.7, 0]);
    expect(bearingDeg(turnAboutUpright(direction(37, 12), 41))).toBeCloseTo(78, 9);
  });

  it('takes the shorter way between bearings', () => {
    expect(turnDeg(350, 20)).toBe(30);
    expect(turnDeg(20, 350)).toBe(-30);
    expect(turnDeg(0, 180)).toBe(180);
    expect(wrapDeg(-90)).toBe(270);
  });

  it('names the nearest of eight winds', () => {
    expect([0, 22, 23, 135, 247, 338].map(wind)).toEqual([
      'north',
      'north',
      'north-east',
      'south-east',
      'south-west',
      'north',
    ]);
  });

  it('measures angles that an arc cosine would lose', () => {
    expect(angleBetweenDeg([1, 0, 0], [1, 1e-9, 0])).toBeCloseTo(1e-9 * (180 / Math.PI), 15);
    expect(angleBetweenDeg([0, 2, 0], [0, -3, 0])).toBe(180);
  });
});
