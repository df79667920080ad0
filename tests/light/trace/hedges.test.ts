import { describe, expect, it } from 'vitest';
import type { Cloud, Receiver, Surface } from '../../../src/geometry/surface.ts';
import { add, scale, type Vec3 } from '../../../src/geometry/vec.ts';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';
import { cloudShares, plainCaster } from '../../../src/light/trace/lattice/caster.ts';
import { latticeOver } from '../../../src/light/trace/lattice/lattice.ts';
import { makeLatticeScene } from '../../../src/light/trace/lattice/scene.ts';
import { pathInCloudM } from '../../../src/light/trace/meet.ts';
import { parallelBeamTracer } from '../../../src/light/trace/parallelBeam.ts';
import type { MakeTracer } from '../../../src/light/tracer.ts';
import { pointOf } from './lattice/points.ts';
import { anyDirection, between, pointIn, sceneOf, stream } from './scene.ts';

const optics = { transmittance: 0, reflectance: 0 };

function turnedBoxes(seed: number, count: number): Cloud[] {
  const draw = stream(seed);
  return Array.from({ length: count }, () => ({
    shape: 'cloud',
    form: 'box',
    owner: 0,
    optics,
    centre: pointIn(draw, 1),
    halfSizeM: [between(draw, 0.1, 0.9), between(draw, 0.2, 0.5), between(draw, 0.05, 0.4)],
    turnedDeg: between(draw, 0, 360),
    extinctionPerM: between(draw, 0.3, 1.9),
  }));
}

/** Directions at random, upright, level and along the sides of boxes. */
const directions = (seed: number): Vec3[] => {
  const draw = stream(seed);
  return [[0, 1, 0], [1, 0, 0], [0, 0, -1], ...Array.from({ length: 25 }, () => anyDirection(draw))];
};

/** Entry per receiver: share that all boxes let through. */
function shares(
  makeTracer: MakeTracer,
  surfaces: readonly Surface[],
  receivers: readonly Receiver[],
  toSky: Vec3,
): number[] {
  const passed = receivers.map(() => 1);
  makeTracer(surfaces, receivers)(toSky, (r, _, share) => {
    passed[r] = (passed[r] as number) * share;
  });
  return passed;
}

describe('hedges and fences, boxes of leaves', () => {
  it('dim sensors in, before and behind them as brute force says (seed 521)', () => {
    const draw = stream(521);
    const surfaces = turnedBoxes(521, 9);
    const receivers = Array.from({ length: 150 }, (): Receiver => {
      return { point: pointIn(draw, 1.4), normal: anyDirection(draw), sides: 'both', onSurface: -1 };
    });
    let dimmed = 0;
    for (const toSky of directions(522)) {
      const [fast, slow] = [parallelBeamTracer, bruteForceTracer].map((make) =>
        shares(make, surfaces, receivers, toSky),
      );
      fast?.forEach((share, r) => {
        expect(Math.abs(share - (slow?.[r] ?? Number.NaN)), `receiver ${r}`).toBeLessThan(1e-12);
        if (share < 1) dimmed++;
      });
    }
    expect(dimmed).toBeGreaterThan(500);
  });

  it('dim every hit of a leaf by the path from it to the light (seed 531)', () => {
    const { surfaces: leaves } = sceneOf(531, {
      leaves: 50,
      stems: 0,
      triangles: 0,
      clouds: 0,
      openReceivers: 0,
    });
    const boxes = turnedBoxes(532, 5);
    const surfaces = [...leaves, ...boxes];
    const group = Int32Array.from(surfaces, (_, i) => (i < leaves.length ? 0 : -1));
    const scene = makeLatticeScene({ surfaces, group, groupCount: 1 });
    let hitCount = 0;
    for (const toSky of directions(533)) {
      const lattice = latticeOver(scene, toSky, 0.071, 0.3, 0.6);
      const hits = plainCaster(scene).cast(lattice);
      const got = cloudShares(scene, lattice, hits);
      for (let ray = 0; ray < lattice.columns * lattice.rows; ray++) {
        for (let k = hits.start[ray] as number; k < (hits.start[ray + 1] as number); k++) {
          const point = pointOf(lattice, ray, hits.ahead[k] as number);
          const depth = boxes.reduce(
            (sum, box) => sum + box.extinctionPerM * pathInCloudM(box, point, toSky),
            0,
          );
          expect(got?.[k]).toBeCloseTo(Math.exp(-depth), 10);
          hitCount++;
        }
      }
    }
    expect(hitCount).toBeGreaterThan(1000);
  });

  it('dim nothing beyond them, and the same wherever the whole scene stands', () => {
    const [box] = turnedBoxes(541, 1) as [Cloud];
    const behind = add(box.centre, scale([0.6, 0.8, 0], 3));
    const one = (point: Vec3): Receiver => ({ point, normal: [0, 1, 0], sides: 'both', onSurface: -1 });
    expect(shares(parallelBeamTracer, [box], [one(behind)], [0.6, 0.8, 0])).toEqual([1]);
    const far: Vec3 = [4000, 3, -7000];
    const through = shares(parallelBeamTracer, [box], [one(box.centre)], [0.6, 0.8, 0])[0] as number;
    const moved: Cloud = { ...box, centre: add(box.centre, far) };
    expect(through).toBeLessThan(0.95);
    expect(shares(parallelBeamTracer, [moved], [one(moved.centre)], [0.6, 0.8, 0])[0]).toBeCloseTo(
      through,
      9,
    );
  });
});
