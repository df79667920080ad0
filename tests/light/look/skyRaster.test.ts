import { describe, expect, it } from 'vitest';
import { random01 } from '../../../src/geometry/random.ts';
import { angleBetweenDeg, up } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { directionAtPlace, skyDots, skyPlace } from '../../../src/light/look/skyRaster.ts';

const seed = 88;

describe('the round picture of the sky', () => {
  it('has north at the top, east on the right, the zenith in the middle and the horizon as its rim', () => {
    const places = [0, 90, 180, 270].map((bearing) => skyPlace(direction(bearing, 30)));
    const third = 2 / 3;
    [
      [0, third],
      [third, 0],
      [0, -third],
      [-third, 0],
    ].forEach(([toEast, toNorth], i) => {
      expect(places[i]?.[0]).toBeCloseTo(toEast as number, 12);
      expect(places[i]?.[1]).toBeCloseTo(toNorth as number, 12);
    });
    expect(skyPlace(up)).toEqual([0, 0]);
    expect(Math.hypot(...skyPlace(direction(213, 0)))).toBeCloseTo(1, 12);
    expect(directionAtPlace(0.8, 0.7)).toBeNull();
  });

  it(`finds the direction of a place and the place of a direction, seed ${seed}`, () => {
    for (let i = 0; i < 200; i++) {
      const [bearing, elevation] = [360 * random01(seed, i, 0), 90 * random01(seed, i, 1)];
      const toSky = direction(bearing, elevation);
      const back = directionAtPlace(...skyPlace(toSky));
      expect(angleBetweenDeg(back ?? [0, -1, 0], toSky)).toBeLessThan(1e-5);
    }
  });

  it('weighs its dots by solid angle and by the cosine: rings by their closed forms', () => {
    const dots = skyDots(96);
    expect(dots.reduce((sum, { solidAngleShare }) => sum + solidAngleShare, 0)).toBeCloseTo(1, 9);
    for (const zenithDeg of [17, 43, 71]) {
      const inside = dots.filter(({ toSky }) => angleBetweenDeg(toSky, up) < zenithDeg);
      const solid = inside.reduce((sum, { solidAngleShare }) => sum + solidAngleShare, 0);
      const cosine = inside.reduce((sum, { cosineShare }) => sum + cosineShare, 0);
      // Floor: the dots of the ring's edge, of which a third of a dot either way stays after summing.
      expect(Math.abs(solid - (1 - Math.cos((zenithDeg * Math.PI) / 180)))).toBeLessThan(0.004);
      expect(Math.abs(cosine - Math.sin((zenithDeg * Math.PI) / 180) ** 2)).toBeLessThan(0.004);
    }
  });

  it('needs a whole number of dots', () => {
    expect(() => skyDots(1)).toThrow('got 1');
    expect(() => skyDots(10.5)).toThrow('got 10.5');
  });
});
