/**
 * Further configuration factors: Howell, A Catalog of Radiation Heat Transfer Configuration Factors, and Siegel & Howell, appendix;
 * formulas from memory, and each checked against another one where they meet. Tolerance: 20,740 rays of one sensor leave
 * about 0.0006; means over many sensors less.
 */
import { describe, expect, test } from 'vitest';
import type { Receiver } from '../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { direction, rad } from '../../../src/geometry/world.ts';
import { disc, discField, level, longWall, sheet, tube, viewFactorFrom, viewOf } from './scenes.ts';

/** Howell C-41: from a disc of radius r1 to one of r2, on one axis, h apart. */
function coaxialDiscs(r1: number, r2: number, h: number): number {
  const x = 1 + (h * h + r2 * r2) / (r1 * r1);
  return (x - Math.sqrt(x * x - 4 * (r2 / r1) ** 2)) / 2;
}

/** Howell B-3: a level sensor under the corner of a level rectangle a by b at height c. */
function cornerAbove(a: number, b: number, c: number): number {
  const [x, y] = [a / c, b / c];
  const side = (p: number, q: number): number => (p / Math.hypot(1, p)) * Math.atan(q / Math.hypot(1, p));
  return (side(x, y) + side(y, x)) / (2 * Math.PI);
}

/** Howell B-4: a level sensor at distance c before the foot of an upright rectangle's corner, b wide and a high. */
function cornerBeside(a: number, b: number, c: number): number {
  const [x, y] = [a / b, c / b];
  const slant = Math.hypot(x, y);
  return (Math.atan(1 / y) - (y / slant) * Math.atan(1 / slant)) / (2 * Math.PI);
}

const leaning = (tiltDeg: number, bearing: number): Receiver => ({
  ...level([0, 0, 0]),
  normal: direction(bearing, 90 - tiltDeg),
});

describe('configuration factors of the handbooks', () => {
  test('coaxial discs, as far apart as they are wide in radius, exchange 0.382 (Incropera, Table 13.2)', () => {
    expect(coaxialDiscs(1, 1, 1)).toBeCloseTo(0.382, 3);
  });

  test.each([
    [1, 1, 1],
    [0.7, 1.4, 0.6],
    [1.3, 0.5, 0.9],
  ])('discs of radius %f and %f, %f apart (0.001)', (r1, r2, h) => {
    const got = viewFactorFrom(discField(r1, 900), [disc([0, h, 0], r2)], { subdivision: 4, waves: 2 });
    expect(Math.abs(got - coaxialDiscs(r1, r2, h))).toBeLessThan(0.001);
  });

  test.each([
    [1, 1, 1],
    [0.4, 2.3, 0.7],
  ])('a rectangle %f by %f at height %f with its corner above the sensor (0.002)', (a, b, c) => {
    const above = sheet([0, c, 0], [a, c, 0], [a, c, b], [0, c, b]);
    expect(Math.abs(1 - viewOf([above]) - cornerAbove(a, b, c))).toBeLessThan(0.002);
  });

  test.each([
    [1, 1, 1],
    [2.1, 0.6, 0.3],
  ])('an upright rectangle %f high and %f wide, its corner %f off (0.002)', (a, b, c) => {
    const wall = sheet([c, 0, 0], [c, 0, b], [c, a, b], [c, a, 0]);
    expect(Math.abs(1 - viewOf([wall]) - cornerBeside(a, b, c))).toBeLessThan(0.002);
  });

  test.each([
    [0.5, 1.3, 0],
    [0.5, 1.3, 37],
    [0.3, 2, 61],
  ])(
    'a ball of radius %f, %f off, %f degrees from upright hides cos x (r / h)^2 (Howell B-20; 0.002)',
    (r, h, fromUpright) => {
      const [x, y, z] = direction(211, 90 - fromUpright);
      const centre: Vec3 = [x * h, y * h, z * h];
      const expected = Math.cos(rad(fromUpright)) * (r / h) ** 2;
      expect(Math.abs(1 - viewOf([tube(centre, centre, r)]) - expected)).toBeLessThan(0.002);
    },
  );

  test.each([
    [0.4, 1.1],
    [0.15, 0.9],
  ])(
    'an endless level tube of radius %f, its middle %f above, hides r / h (crossed strings; 0.002)',
    (r, h) => {
      const along = tube([-400, h, 300], [400, h, -300], r);
      expect(Math.abs(1 - viewOf([along]) - r / h)).toBeLessThan(0.002);
    },
  );

  // Crossed strings: even sky between two angles from the normal, in the plane across the wall, is half the difference of sines.
  test.each([0, 25, 50])(
    'a facade whose neighbour opposite rises %f degrees sees (1 - sin) / 2 of the sky (0.002)',
    (rise) => {
      const facade: Receiver = { ...level([0, 0, 0]), normal: [1, 0, 0] };
      const view = viewOf([longWall(1, Math.tan(rad(rise)) + 1e-9, 0)], facade);
      expect(Math.abs(view - (1 - Math.sin(rad(rise))) / 2)).toBeLessThan(0.002);
    },
  );

  test.each([
    [20, 90],
    [20, 270],
    [55, 90],
    [55, 270],
  ])(
    'a sensor leaning %f degrees to bearing %f beside a wall 40 degrees high in the east (0.002)',
    (tilt, bearing) => {
      // From its normal the sky reaches to the wall's top on one side and to the level (or to 90 degrees) on the other.
      const lean = bearing === 90 ? tilt : -tilt;
      const toWall = Math.min(90, 90 - 40 - lean);
      const toOpen = Math.min(90, 90 + lean);
      const expected = (Math.sin(rad(toWall)) + Math.sin(rad(toOpen))) / 2;
      const view = viewOf([longWall(1, Math.tan(rad(40)), 0)], leaning(tilt, bearing));
      expect(Math.abs(view - expected)).toBeLessThan(0.002);
    },
  );
});
