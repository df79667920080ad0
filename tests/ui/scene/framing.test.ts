import * as fc from 'fast-check';
import { OrthographicCamera, PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { angleBetweenDeg, distance, sub, type Vec3 } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { between } from '../../../src/ui/scene/flight.ts';
import { closeUp, frame, frameFromAfar, frameWithin, viewDirection } from '../../../src/ui/scene/framing.ts';

const seed = 20260713;
const fieldDeg = 34;

/** Where the points come to lie in the picture: -1 to 1 from edge to edge. */
function inPicture(
  points: readonly Vec3[],
  eye: Vec3,
  target: Vec3,
  aspect: number,
): { x: number; y: number }[] {
  const camera = new PerspectiveCamera(fieldDeg, aspect, 0.01, 1000);
  camera.position.set(...eye);
  camera.lookAt(...target);
  camera.updateMatrixWorld();
  return points.map((p) => new Vector3(...p).project(camera));
}

describe('frame', () => {
  it(`keeps every point inside the margins, upright or broadside (seed ${seed})`, () => {
    const metre = fc.double({ min: -2.3, max: 3.1, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(metre, metre, metre), { minLength: 1, maxLength: 30 }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: -20, max: 89, noNaN: true }),
        fc.constantFrom(390 / 600, 1000 / 800, 2.3),
        (points, bearing, elevation, aspect) => {
          const { eye, target } = frame(points, direction(bearing, elevation), fieldDeg, aspect, 0.07);
          for (const { x, y } of inPicture(points, eye, target, aspect)) {
            expect(Math.abs(x)).toBeLessThanOrEqual(0.86 + 1e-6);
            expect(Math.abs(y)).toBeLessThanOrEqual(0.86 + 1e-6);
          }
        },
      ),
      { seed, numRuns: 200 },
    );
  });

  it('comes as near as the margins let it', () => {
    const points: Vec3[] = [
      [-0.7, 0, 0],
      [0.7, 0, 0],
      [0, 1.9, 0],
    ];
    const { eye, target } = frame(points, direction(180, 0), fieldDeg, 1.25, 0.1);
    const ys = inPicture(points, eye, target, 1.25).map(({ y }) => y);
    expect(Math.max(...ys)).toBeCloseTo(0.8, 6);
    expect(Math.min(...ys)).toBeCloseTo(-0.8, 6);
  });

  it('leaves free what lies over the picture above and below, and is centred in the room between', () => {
    const points: Vec3[] = [
      [-0.3, 0, 0],
      [0.3, 0, 0],
      [0, 1.9, 0],
    ];
    const size = { width: 390, height: 404 };
    const covered = { above: 56, below: 68 };
    const { eye, target } = frameWithin(points, direction(180, 0), fieldDeg, size, covered);
    const pixels = inPicture(points, eye, target, size.width / size.height).map(
      ({ y }) => ((1 - y) / 2) * size.height,
    );
    const freePx = 0.02 * (404 - 56 - 68);
    expect(Math.min(...pixels)).toBeCloseTo(56 + freePx, 4);
    expect(Math.max(...pixels)).toBeCloseTo(404 - 68 - freePx, 4);
  });

  it('refuses an empty picture', () => {
    expect(() => frame([], [0, 0, 1], fieldDeg, 1, 0)).toThrow('at least one point');
  });
});

describe('viewDirection', () => {
  it('looks straight from the side it is named after, so that depth is one axis of the world', () => {
    expect(viewDirection('east', 20)).toEqual([1, 0, 0]);
    expect(viewDirection('north', 20)).toEqual([0, 0, -1]);
    expect(viewDirection('above', 20)).toEqual([0, 1, 0]);
    expect(angleBetweenDeg(viewDirection('free', 20), direction(20, 14))).toBeLessThan(1e-6);
  });
});

describe('closeUp', () => {
  it('stands on the side of the trunk where the thing is', () => {
    const here = { eye: [0, 1, 9] as Vec3, target: [0, 1, 0] as Vec3 };
    const { eye, target } = closeUp([[-0.6, 1.2, 0.1]], [0, 0, 0], here, fieldDeg, 0.7, 0.07);
    expect(eye[0]).toBeLessThan(-1);
    expect(distance(target, [-0.6, 1.2, 0.1])).toBeLessThan(0.1);
  });

  it('keeps its side for what is over the trunk', () => {
    const here = { eye: [9, 1, 0] as Vec3, target: [0, 1, 0] as Vec3 };
    const { eye } = closeUp([[0.01, 1.2, 0]], [0, 0, 0], here, fieldDeg, 0.7, 0.07);
    expect(eye[0]).toBeGreaterThan(0.8);
    expect(Math.abs(eye[2])).toBeLessThan(0.01);
  });
});

describe('between', () => {
  const from = { eye: [0, 0.5, 4] as Vec3, target: [0, 0.5, 0] as Vec3 };
  const to = { eye: [0.3, 0.9, -2] as Vec3, target: [0.3, 0.9, 0] as Vec3 };

  it('begins and ends where it is told', () => {
    expect(distance(between(from, to, 0).eye, from.eye)).toBeLessThan(1e-9);
    expect(between(from, to, 1)).toEqual(to);
    expect(between(from, to, 1.4)).toEqual(to);
  });

  it('goes round the tree, never through it', () => {
    for (let t = 0; t <= 1; t += 0.07) {
      const { eye, target } = between(from, to, t);
      expect(Math.hypot(...sub(eye, target))).toBeGreaterThanOrEqual(2 - 1e-9);
    }
  });
});

describe('frameFromAfar', () => {
  const size = { width: 391, height: 457 };
  const covered = { above: 57, below: 71 };

  it(`fits every point between what covers the picture, from any side (seed ${seed})`, () => {
    const metre = fc.double({ min: -2.3, max: 3.1, noNaN: true });
    const degrees = fc.double({ min: 0, max: 360, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(metre, metre, metre), { minLength: 1, maxLength: 40 }),
        degrees,
        fc.double({ min: 1, max: 89, noNaN: true }),
        (points, bearing, elevation) => {
          const toSun = direction(bearing, elevation);
          const { eye, target, pxPerM } = frameFromAfar(points, toSun, size, covered);
          const camera = new OrthographicCamera(-195.5, 195.5, 228.5, -228.5, 0.05, 200);
          camera.zoom = pxPerM;
          camera.updateProjectionMatrix();
          camera.position.set(...eye);
          camera.lookAt(...target);
          camera.updateMatrixWorld();
          for (const point of points) {
            const { x, y, z } = new Vector3(...point).project(camera);
            expect(Math.abs(x)).toBeLessThan(1);
            expect(Math.abs(z)).toBeLessThan(1);
            const fromTop = ((1 - y) / 2) * size.height;
            expect(fromTop).toBeGreaterThan(covered.above - 1);
            expect(fromTop).toBeLessThan(size.height - covered.below + 1);
          }
          expect(angleBetweenDeg(sub(eye, target), toSun)).toBeLessThan(1e-4);
        },
      ),
      { seed, numRuns: 100 },
    );
  });

  it('refuses to look at nothing', () => {
    expect(() => frameFromAfar([], [0, 1, 0], size, covered)).toThrow(/at least one point/);
  });
});
