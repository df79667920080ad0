/** What rays meet first, against a tracer that knows nothing of ours: three-mesh-bvh on the same shapes as triangles. */
import { BufferAttribute, BufferGeometry, DoubleSide, Ray } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { describe, expect, it } from 'vitest';
import { surfaceTriangles } from '../../../src/document/scene/surfaceTriangles.ts';
import type { Receiver, Surface } from '../../../src/geometry/surface.ts';
import { up, type Vec3 } from '../../../src/geometry/vec.ts';
import { firstMetSteps, type Met } from '../../../src/light/look/firstMet.ts';
import { skyDots } from '../../../src/light/look/skyRaster.ts';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';
import { lobed, sceneOf } from '../trace/scene.ts';

function met(surfaces: readonly Surface[], receiver: Receiver, directions: readonly Vec3[]): Met {
  const steps = firstMetSteps(surfaces, receiver, directions);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const eye: Receiver = { point: [0.05, 0.31, -0.02], normal: up, sides: 'one', onSurface: -1 };
const dots = skyDots(48);
const directions = dots.map(({ toSky }) => toSky);

/** First surface on each ray by triangles; -1 for none. */
function firstByTriangles(surfaces: readonly Surface[], { point }: Receiver): number[] {
  const perSurface = surfaceTriangles(surfaces);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(perSurface.flat(3)), 3));
  const surfaceOf = perSurface.flatMap((triangles, s) => triangles.map(() => s));
  const bvh = new MeshBVH(geometry, { indirect: true });
  const ray = new Ray();
  return directions.map((toSky) => {
    ray.origin.set(...point);
    ray.direction.set(...toSky);
    const hit = bvh.raycastFirst(ray, DoubleSide);
    return hit === null ? -1 : (surfaceOf[hit.faceIndex as number] as number);
  });
}

describe('what is met first', () => {
  it.each([601, 602, 603])('is what a general ray tracer meets first, leaves and meshes, seed %i', (seed) => {
    const { surfaces } = sceneOf(seed, { leaves: 60, stems: 0, triangles: 9, clouds: 0, openReceivers: 1 });
    const expected = firstByTriangles(surfaces, eye);
    const { first } = met(surfaces, eye, directions);
    const off = expected.filter((surface, d) => surface !== first[d]).length;
    expect(expected.filter((surface) => surface >= 0).length).toBeGreaterThan(300);
    // Outlines cross themselves nowhere; rays within rounding of an edge may differ: single precision in theirs.
    expect(off).toBeLessThanOrEqual(2);
  });

  it.each([611, 612])('is so for round wood and clouds too, but on their rims, seed %i', (seed) => {
    const { surfaces } = sceneOf(seed, { leaves: 20, stems: 40, triangles: 2, clouds: 3, openReceivers: 1 });
    const outside: Receiver = { ...eye, point: [0.1, -2.3, 0.2] };
    const expected = firstByTriangles(surfaces, outside);
    const { first } = met(surfaces, outside, directions);
    const off = expected.filter((surface, d) => surface !== first[d]).length;
    // Their triangles lie within the round shapes: a rim of one part in a hundred or so.
    expect(off / directions.length).toBeLessThan(0.02);
  });

  it.each([621, 622])('passes the light that the plain tracer passes, seed %i', (seed) => {
    const size = { leaves: 50, stems: 20, triangles: 5, clouds: 3, openReceivers: 1 };
    const { surfaces } = sceneOf(seed, size);
    const some = directions.filter((_, d) => d % 7 === 0);
    const { passed, straight } = met(surfaces, eye, some);
    const trace = bruteForceTracer(surfaces, [eye]);
    some.forEach((toSky, d) => {
      let [light, clear] = [1, 1];
      trace(toSky, (_, surface, share) => {
        light *= share;
        clear *= (surfaces[surface] as Surface).owner === 0 ? share : 0;
      });
      expect(passed[d]).toBeCloseTo(light, 6);
      expect(straight[d]).toBeCloseTo(clear, 6);
    });
  });

  it('leaves out the leaf that the receiver lies on, and nothing else', () => {
    const leaf = (y: number): Surface => ({
      shape: 'blade',
      owner: 1,
      optics: { transmittance: 0, reflectance: 0 },
      origin: [-0.4, y, 0],
      along: [1, 0, 0],
      across: [0, 0, 1],
      outline: lobed,
    });
    const on: Receiver = { point: [0, 0.5, 0], normal: up, sides: 'both', onSurface: 0 };
    expect(met([leaf(0.5), leaf(0.9)], on, [up]).first[0]).toBe(1);
    expect(met([leaf(0.5)], on, [up])).toMatchObject({
      first: Int32Array.of(-1),
      passed: Float32Array.of(1),
    });
  });

  // Howell, catalog of view factors, B-12: a disc of radius R at height h takes 1 / (1 + h^2 / R^2) of a level sensor's even sky;
  // by solid angle it takes 1 - 1 / sqrt(1 + R^2 / h^2). With h = R / 2 that is 0.80 against 0.553.
  it('takes from a sensor under a disc 0.80 of the sky by the cosine and 0.553 by solid angle', () => {
    const corners = 720;
    const rim = Array.from({ length: corners }, (_, i) => {
      const angle = (2 * Math.PI * i) / corners;
      return [2 * Math.cos(angle), 2 * Math.sin(angle)] as const;
    });
    const disc: Surface = {
      shape: 'blade',
      owner: 1,
      optics: { transmittance: 0, reflectance: 0 },
      origin: [0, 1, 0],
      along: [1, 0, 0],
      across: [0, 0, 1],
      outline: rim,
    };
    const fine = skyDots(192);
    const { straight } = met(
      [disc],
      { ...eye, point: [0, 0, 0] },
      fine.map(({ toSky }) => toSky),
    );
    const hidden = (share: 'solidAngleShare' | 'cosineShare') =>
      fine.reduce((sum, dot, d) => sum + dot[share] * (1 - (straight[d] as number)), 0);
    // Floor: half a dot of the rim, 0.47 degrees of 63.4.
    expect(Math.abs(hidden('cosineShare') - 0.8)).toBeLessThan(0.003);
    expect(Math.abs(hidden('solidAngleShare') - (1 - 1 / Math.sqrt(5)))).toBeLessThan(0.003);
  });
});
