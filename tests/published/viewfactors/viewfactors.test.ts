import { describe, expect, test } from 'vitest';
import type { Receiver } from '../../../src/geometry/surface.ts';
import { rad } from '../../../src/geometry/world.ts';
import { checkCases } from '../checkCases.ts';
import { discToTheSide } from '../closed/forms.ts';
import { viewfactors } from './answers.ts';
import { disc, field, level, longWall, meanView, sheet, viewFactorFrom, viewOf } from './scenes.ts';

describe('view factors', () => {
  checkCases(viewfactors);
});

/** From a rectangle w deep to a wall h high on its edge, common edge 1. Hamilton and Morgan 1952 (Howell C-14, from memory). */
function floorToWall(w: number, h: number): number {
  const [w2, h2] = [w * w, h * h];
  const all = 1 + w2 + h2;
  const slant = Math.sqrt(w2 + h2);
  const log =
    Math.log(((1 + w2) * (1 + h2)) / all) +
    w2 * Math.log((w2 * all) / ((1 + w2) * (w2 + h2))) +
    h2 * Math.log((h2 * all) / ((1 + h2) * (w2 + h2)));
  const arcs = w * Math.atan(1 / w) + h * Math.atan(1 / h) - slant * Math.atan(1 / slant);
  return (arcs + log / 4) / (Math.PI * w);
}

describe('further closed forms', () => {
  test('a ring to the side hides what its outer disc hides less what its inner one does (0.002)', () => {
    const [h, a] = [0.9, 0.5];
    const outer = discToTheSide(1.4, h, a);
    const inner = discToTheSide(0.6, h, a);
    const points = (r: number, turn: 1 | -1): [number, number][] =>
      Array.from({ length: 361 }, (_, i) => [r * Math.cos(turn * rad(i)), r * Math.sin(turn * rad(i))]);
    const ring = { ...disc([0.3, h, 0.4], 1), outline: [...points(1.4, 1), ...points(0.6, -1)] };
    expect(Math.abs(1 - viewOf([ring]) - (outer - inner))).toBeLessThan(0.002);
  });

  test('a disc hides 0.80 of the sky of a level sensor, 0.55 of that of leaves turned anyhow (closed forms: 0.002)', () => {
    // By the cosine R^2 / (h^2 + R^2); by solid angle 1 - h / sqrt(h^2 + R^2). Leaf normals even over the half-sphere, on a
    // golden spiral; 10,370 rays leave about 0.0006.
    const leaves = Array.from({ length: 500 }, (_, i): Receiver => {
      const height = (i + 0.5) / 500;
      const turn = i * Math.PI * (3 - Math.sqrt(5));
      const flat = Math.sqrt(1 - height * height);
      return {
        ...level([0, 0, 0]),
        normal: [flat * Math.cos(turn), height, flat * Math.sin(turn)],
        sides: 'both',
      };
    });
    const effort = { subdivision: 6, waves: 2 };
    const above = [disc([0, 0.5, 0], 1)];
    const leafShare = 1 - meanView(above, leaves, effort) / meanView([], leaves, effort);
    expect(Math.abs(leafShare - (1 - 0.5 / Math.hypot(0.5, 1)))).toBeLessThan(0.002);
    expect(Math.abs(1 - viewOf(above) - 0.8)).toBeLessThan(0.002);
  });

  test('unit squares at right angles exchange 0.20004 (Incropera Fig. 13.6; formula of Hamilton and Morgan)', () => {
    expect(floorToWall(1, 1)).toBeCloseTo(0.20004, 5);
  });

  // Fields of 1/40 next to the wall see it by up to half the sky, which the middle of the field rounds: 0.0005.
  test.each([
    [1, 1],
    [0.7, 1.6],
    [1.8, 0.5],
  ])('a floor %f deep sends its share to a wall %f high on its edge (0.001)', (w, h) => {
    const wall = sheet([0, 0, 0], [0, 0, 1], [0, h, 1], [0, h, 0]);
    expect(
      Math.abs(viewFactorFrom(field(w, 1, 40), [wall], { subdivision: 3, waves: 4 }) - floorToWall(w, h)),
    ).toBeLessThan(0.001);
  });

  test('a wall seen by a sensor turned away from it takes nothing, by one turned to it the more (0.002)', () => {
    const wall = longWall(1, 1, 0);
    const towards = (deg: number): Receiver => ({
      ...level([0, 0, 0]),
      normal: [Math.sin(rad(deg)), Math.cos(rad(deg)), 0],
    });
    expect(Math.abs(viewOf([wall], towards(30)) - seenBetween(30))).toBeLessThan(0.002);
    expect(Math.abs(viewOf([wall], towards(-30)) - seenBetween(-30))).toBeLessThan(0.002);
    expect(Math.abs(viewOf([wall], towards(-90)) - 0.5)).toBeLessThan(0.002);
  });
});

/**
 * Even sky seen by a sensor tilted `tiltDeg` towards an endless wall that rises 45 degrees, by the crossed-string rule: half the
 * difference of the sines of the angles, from the normal, that bound the sky in the plane across the wall.
 */
function seenBetween(tiltDeg: number): number {
  const fromWall = 45 - tiltDeg;
  const farHorizon = Math.max(-90, -90 - tiltDeg);
  return (Math.sin(rad(fromWall)) - Math.sin(rad(farHorizon))) / 2;
}
