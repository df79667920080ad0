import { describe, expect, it } from 'vitest';
import { earClip } from '../../../src/document/scene/earClip.ts';
import type { Triangle } from '../../../src/document/scene/revolve.ts';
import { surfaceTriangles } from '../../../src/document/scene/surfaceTriangles.ts';
import { isInside, type Outline, outlineArea, signedArea } from '../../../src/geometry/outline.ts';
import { random01 } from '../../../src/geometry/random.ts';
import { type Cloud, opaque, type Stem } from '../../../src/geometry/surface.ts';
import { cross, dot, normalize, sub, type Vec3 } from '../../../src/geometry/vec.ts';
import { meetsStem, meetsTriangle, pathInCloudM } from '../../../src/light/trace/meet.ts';
import { figLeafOutline } from '../../../src/species/fig/leafOutline.ts';

const stem: Stem = {
  shape: 'stem',
  owner: 3,
  optics: opaque,
  from: [0.31, 0.42, -0.17],
  to: [0.77, 1.13, 0.21],
  fromRadiusM: 0.042,
  toRadiusM: 0.019,
};
const cloud: Cloud = {
  shape: 'cloud',
  owner: 0,
  optics: opaque,
  centre: [1.3, 2.1, -0.7],
  halfSizeM: [1.1, 1.7, 0.8],
  extinctionPerM: 0.9,
};

const trianglesOf = (surface: Stem | Cloud): Triangle[] => surfaceTriangles([surface])[0] as Triangle[];

/** Six times the volume inside, above 0 when the corners run anticlockwise seen from outside. */
const volumeM3 = (triangles: readonly Triangle[]): number =>
  triangles.reduce((sum, [a, b, c]) => sum + dot(a, cross(b, c)), 0) / 6;

/** A ray through a box of half a metre round a middle. */
function rayNear(middle: Vec3, halfM: number, seed: number, i: number): { from: Vec3; toSky: Vec3 } {
  const number = (what: number): number => 2 * random01(seed, i, what) - 1;
  const toSky = normalize([number(0), number(1), number(2)]);
  const at: Vec3 = [0, 1, 2].map((k) => (middle[k] as number) + halfM * number(3 + k)) as unknown as Vec3;
  return { from: sub(at, [5 * toSky[0], 5 * toSky[1], 5 * toSky[2]]), toSky };
}

const crossings = (triangles: readonly Triangle[], from: Vec3, toSky: Vec3): number =>
  triangles.filter(([a, b, c]) => meetsTriangle(a, b, c, from, toSky)).length;

describe('round wood as triangles', () => {
  it('is closed: every edge is run through once either way', () => {
    const edges = new Map<string, number>();
    const name = (v: Vec3): string => v.map((x) => x.toFixed(12)).join(' ');
    for (const [a, b, c] of trianglesOf(stem)) {
      for (const [p, q] of [
        [a, b],
        [b, c],
        [c, a],
      ] as const) {
        edges.set(`${name(p)} ${name(q)}`, (edges.get(`${name(p)} ${name(q)}`) ?? 0) + 1);
      }
    }
    for (const [edge, times] of edges) {
      const [a, b, c, d, e, f] = edge.split(' ');
      expect(times).toBe(1);
      expect(edges.get([d, e, f, a, b, c].join(' '))).toBe(1);
    }
  });

  it('stops as many rays as the round cone within 0.5 %, and differs from it on 1.5 % of those (seed 71)', () => {
    const triangles = trianglesOf(stem);
    let [round, flat, differ] = [0, 0, 0];
    for (let i = 0; i < 12_000; i++) {
      const { from, toSky } = rayNear([0.54, 0.78, 0.02], 0.3, 71, i);
      const isRound = meetsStem(stem, from, toSky);
      const isFlat = crossings(triangles, from, toSky) > 0;
      round += Number(isRound);
      flat += Number(isFlat);
      differ += Number(isRound !== isFlat);
    }
    expect(round).toBeGreaterThan(1000);
    expect(Math.abs(flat / round - 1)).toBeLessThan(0.005);
    expect(differ / round).toBeLessThan(0.015);
    expect(differ).toBeGreaterThan(0);
  });

  it('is one ball where the thinner end lies inside the thicker', () => {
    const ball = trianglesOf({ ...stem, to: [0.315, 0.425, -0.17] });
    const whole = (4 / 3) * Math.PI * 0.042 ** 3;
    expect(volumeM3(ball)).toBeGreaterThan(0.8 * whole);
    expect(volumeM3(ball)).toBeLessThan(whole);
  });

  it('is nothing without thickness', () => {
    expect(trianglesOf({ ...stem, fromRadiusM: 0, toRadiusM: 0 })).toEqual([]);
  });
});

describe('a crown as triangles', () => {
  it('holds the volume of its ellipsoid within 0.5 %, and rays run as far inside within 1 % in the mean (seed 72)', () => {
    const triangles = trianglesOf(cloud);
    expect(volumeM3(triangles) / ((4 / 3) * Math.PI * 1.1 * 1.7 * 0.8)).toBeCloseTo(1, 2);
    let [round, flat] = [0, 0];
    for (let i = 0; i < 1500; i++) {
      const { from, toSky } = rayNear(cloud.centre, 1.2, 72, i);
      round += pathInCloudM(cloud, from, toSky);
      const places = triangles.flatMap(([a, b, c]) => {
        if (!meetsTriangle(a, b, c, from, toSky)) return [];
        const normal = cross(sub(b, a), sub(c, a));
        return [dot(sub(a, from), normal) / dot(toSky, normal)];
      });
      if (places.length > 0) flat += Math.max(...places) - Math.min(...places);
    }
    expect(Math.abs(flat / round - 1)).toBeLessThan(0.01);
  });
});

describe('a hedge as triangles', () => {
  const hedge: Cloud = { ...cloud, form: 'box', turnedDeg: 27 };

  it('holds the volume of its box, seen from outside anticlockwise', () => {
    expect(volumeM3(trianglesOf(hedge))).toBeCloseTo(8 * 1.1 * 1.7 * 0.8, 9);
  });

  it('is run through by the rays that run through its box, and by no others (seed 73)', () => {
    const triangles = trianglesOf(hedge);
    let inside = 0;
    for (let i = 0; i < 2000; i++) {
      const { from, toSky } = rayNear(cloud.centre, 2, 73, i);
      const runs = pathInCloudM(hedge, from, toSky) > 0;
      if (runs) inside++;
      expect(crossings(triangles, from, toSky), `ray ${i}`).toBe(runs ? 2 : 0);
    }
    expect(inside).toBeGreaterThan(400);
  });
});

describe('an outline cut into triangles', () => {
  const bent: Outline = [
    [0, 0],
    [3.1, 0.2],
    [3, 1.1],
    [1.2, 1],
    [1.1, 2.3],
    [2.9, 2.2],
    [3.2, 3.4],
    [0.1, 3],
  ];
  it.each([
    ['the fig leaf', figLeafOutline],
    ['a bent one, clockwise', [...bent].reverse()],
  ] as const)('covers %s: each point inside by one triangle, none outside (seed 73)', (_, outline) => {
    const cut = earClip(outline).map((corners) => corners.map((i) => outline[i]) as unknown as Outline);
    expect(cut.reduce((sum, part) => sum + outlineArea(part), 0)).toBeCloseTo(outlineArea(outline), 12);
    expect(cut.every((part) => signedArea(part) > 0)).toBe(true);
    const [u0, v0, u1, v1] = [-4, -4, 4, 4];
    for (let i = 0; i < 4000; i++) {
      const [u, v] = [u0 + (u1 - u0) * random01(73, i, 0), v0 + (v1 - v0) * random01(73, i, 1)];
      const inParts = cut.filter((part) => isInside(part, u, v)).length;
      expect(inParts).toBe(Number(isInside(outline, u, v)));
    }
  });

  it('is refused where the outline has no inside to cut', () => {
    const bow: Outline = [
      [0, 0],
      [2, 2.1],
      [2, 0],
      [0, 2],
      [-1, 1],
      [3, 1.05],
    ];
    expect(() => earClip(bow)).toThrow(/^earClip: the outline crosses itself, got \d points/);
  });
});
