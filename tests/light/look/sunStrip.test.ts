import { describe, expect, it } from 'vitest';
import { opaque, type Receiver, type Surface } from '../../../src/geometry/surface.ts';
import { up, type Vec3 } from '../../../src/geometry/vec.ts';
import { sunDay } from '../../../src/light/look/sunDay.ts';
import { type SunStrip, sunStripSteps } from '../../../src/light/look/sunStrip.ts';
import { horizonOf } from '../../../src/light/sky/horizon.ts';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';
import { northern } from '../../season/places.ts';
import { sceneOf } from '../trace/scene.ts';

const sensorAt = (point: Vec3): Receiver => ({ point, normal: up, sides: 'one', onSurface: -1 });
const day = sunDay(northern, '2026-02-17');
const toSun = day.steps.map(({ toSky }) => toSky);

function strip(surfaces: Surface[], receivers: Receiver[], horizon = horizonOf({})): SunStrip {
  const steps = sunStripSteps({ surfaces, receivers, toSun, horizon });
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const hoursOf = ({ lit, steps }: SunStrip, receiver: number): number =>
  day.steps.reduce((sum, { sunH }, s) => sum + sunH * (lit[receiver * steps + s] as number), 0);

/** An upright sheet along x from `fromX` to `toX` at z metres south, from the ground to a height. */
function sheet(
  fromX: number,
  toX: number,
  z: number,
  heightM: number,
  owner: number,
  transmittance = 0,
): Surface {
  const [a, b, c, d] = [
    [fromX, 0, z],
    [toX, 0, z],
    [toX, heightM, z],
    [fromX, heightM, z],
  ] as [Vec3, Vec3, Vec3, Vec3];
  const optics = { transmittance, reflectance: 0 };
  return { shape: 'mesh', owner, optics, triangles: [a, b, c, a, c, d].flat() };
}

describe('the strip of the sun', () => {
  it('gives a sensor in the open the whole day', () => {
    expect(hoursOf(strip([], [sensorAt([0.3, 1.1, -0.7])]), 0)).toBeCloseTo(day.dayLengthH, 6);
  });

  it('shades a sensor north of a long wall while the sun is lower than its edge: by the profile angle', () => {
    // Seen along the wall, the sun stands at the profile angle: tan = up / southward. It is hidden while that is below
    // height over distance, and while it is south of east and west.
    const [heightM, distanceM] = [1.2, 3.1];
    const { lit } = strip([sheet(-5000, 5000, distanceM, heightM, 0)], [sensorAt([0, 0, 0])]);
    const edge = heightM / distanceM;
    const hidden = toSun.map(([, y, z]) => z > 0 && y / z < edge);
    const grazing = toSun.map(([, y, z]) => Math.abs(y / z - edge) < 1e-3);
    const wrong = hidden.filter((isHidden, s) => !grazing[s] && lit[s] !== (isHidden ? 0 : 1));
    expect(wrong).toEqual([]);
    const shaded = hidden.filter(Boolean).length;
    expect(shaded).toBeGreaterThan(5);
    expect(shaded).toBeLessThan(toSun.length - 5);
  });

  it('shades a sensor west of a wall all morning, to solar noon', () => {
    const wall: Surface = {
      shape: 'mesh',
      owner: 0,
      optics: opaque,
      triangles: [0.5, 0, -9e4, 0.5, 0, 9e4, 0.5, 9e4, 9e4, 0.5, 0, -9e4, 0.5, 9e4, 9e4, 0.5, 9e4, -9e4],
    };
    const hours = hoursOf(strip([wall], [sensorAt([0, 0.4, 0])]), 0);
    // The steps begin at noon, so none is cut; the rest is how far noon is from the middle of the day.
    expect(Math.abs(hours - day.dayLengthH / 2)).toBeLessThan(0.02);
  });

  it('counts leaves of the tree as shade and what is fixed and has gaps by its gaps, and passes light through both', () => {
    const noon = toSun.findIndex(([x]) => x < 0) - 1;
    const [leaf, net] = [
      strip([sheet(-9, 9, 0.5, 99, 1, 0.08)], [sensorAt([0, 0, 0])]),
      strip([sheet(-9, 9, 0.5, 99, 0, 0.55)], [sensorAt([0, 0, 0])]),
    ];
    expect([leaf.lit[noon], leaf.passed[noon]]).toEqual([0, expect.closeTo(0.08, 6)]);
    expect([net.lit[noon], net.passed[noon]]).toEqual([expect.closeTo(0.55, 6), expect.closeTo(0.55, 6)]);
  });

  it('ends behind a skyline and behind the slope itself', () => {
    const skyline = { reflectance: 0.1, points: [{ bearingDeg: 0, heightDeg: 12 }] };
    const high = strip([], [sensorAt([0, 1, 0])], horizonOf({ skyline }));
    toSun.forEach(([, y], s) => {
      expect(high.lit[s]).toBe(Math.asin(y) >= (12 * Math.PI) / 180 ? 1 : 0);
    });
    const slope = { slopeDeg: 40, fallsToDeg: 0 };
    const steep = strip([], [sensorAt([0, 1, 0])], horizonOf({ slope }));
    // Ground that falls to the north by 40 degrees hides the sun of a winter noon, which stands at 29.
    expect(steep.lit[toSun.findIndex(([x]) => x < 0)]).toBe(0);
  });

  it.each([501, 502])('is the same by the plain tracer, seed %i', (seed) => {
    const size = { leaves: 40, stems: 12, triangles: 4, clouds: 2, openReceivers: 30 };
    const { surfaces, receivers } = sceneOf(seed, size);
    const scene = { surfaces, receivers, toSun: toSun.slice(0, 21), horizon: null };
    const slow = sunStripSteps(scene, bruteForceTracer);
    const fast = sunStripSteps(scene);
    const end = (steps: typeof slow): SunStrip => {
      for (;;) {
        const step = steps.next();
        if (step.done) return step.value;
      }
    };
    const [a, b] = [end(slow), end(fast)];
    expect(b.lit).toEqual(a.lit);
    b.passed.forEach((share, i) => {
      expect(share).toBeCloseTo(a.passed[i] as number, 6);
    });
  });
});
