import { describe, expect, it } from 'vitest';
import type { Cloud, Mesh, Surface } from '../../../src/geometry/surface.ts';
import { cross, length, type Vec3 } from '../../../src/geometry/vec.ts';
import { seenShare } from '../../../src/light/thrown/exchange.ts';
import { beforePatch, type Patch, pointOf, throwingPatches } from '../../../src/light/thrown/patches.ts';
import { bruteForceTracer } from '../../../src/light/trace/bruteForce.ts';

const sheet = (reflectance: number, ...corners: [Vec3, Vec3, Vec3, Vec3]): Mesh => {
  const [a, b, c, d] = corners;
  const optics = { transmittance: 0, reflectance };
  return { shape: 'mesh', owner: 0, optics, triangles: [a, b, c, a, c, d].flat() };
};
/** Faces the south, 5 m by 3 m, 2 m north of the origin. */
const wall = sheet(0.4, [-2.5, 0, -2], [2.5, 0, -2], [2.5, 3, -2], [-2.5, 3, -2]);
const leaf: Surface = {
  shape: 'blade',
  owner: 1,
  optics: { transmittance: 0.1, reflectance: 0.1 },
  origin: [0, 1, -1],
  along: [0.3, 0, 0],
  across: [0, 0.3, 0],
  outline: [
    [-0.5, -0.5],
    [0.5, -0.5],
    [0.5, 0.5],
    [-0.5, 0.5],
  ],
};
const areaM2 = ({ along, across }: Patch): number => length(cross(along, across));

/** Shares of rays from the origin's column that pass everything before the patch. */
function passes(surfaces: readonly Surface[], from: Vec3, toSky: Vec3): boolean {
  let passed = 1;
  const receiver = { point: from, normal: toSky, sides: 'one', onSurface: -1 } as const;
  bruteForceTracer(surfaces, [receiver])(toSky, (_r, _s, share) => {
    passed *= share;
  });
  return passed === 1;
}

describe('patches that throw light back', () => {
  it('cover the front of a wall without gap, facing the tree', () => {
    const patches = throwingPatches([leaf, wall], [0, 1, 0]);
    expect(patches.reduce((sum, patch) => sum + areaM2(patch), 0)).toBeCloseTo(15, 9);
    for (const patch of patches) {
      expect(patch).toMatchObject({ surface: 1, reflectance: 0.4 });
      expect(patch.normal[2]).toBeCloseTo(1, 12);
    }
  });

  it('are none behind a wall, on a black one, on a leaf', () => {
    expect(throwingPatches([wall], [0, 1, -4])).toEqual([]);
    const black = sheet(0, [-2.5, 0, -2], [2.5, 0, -2], [2.5, 3, -2], [-2.5, 3, -2]);
    expect(throwingPatches([black, leaf], [0, 1, 0])).toEqual([]);
  });

  it('are those that send most, where there are many', () => {
    const far = sheet(0.4, [-2.5, 0, -22], [2.5, 0, -22], [2.5, 3, -22], [-2.5, 3, -22]);
    const walls = [far, wall, far, far];
    const patches = throwingPatches(walls, [0, 1, 0]);
    expect(patches.length).toBeLessThanOrEqual(12);
    expect(patches.filter(({ surface }) => surface === 1)).toHaveLength(6);
  });
});

describe('what stands before a patch', () => {
  const hedge: Cloud = {
    shape: 'cloud',
    form: 'box',
    owner: 0,
    optics: { transmittance: 0, reflectance: 0 },
    centre: [0, 1, -1.5],
    halfSizeM: [0.2, 1, 0.1],
    extinctionPerM: 3,
  };
  const beyond: Cloud = { ...hedge, centre: [0, 1, -3] };
  const surfaces = [leaf, wall, hedge, beyond];
  const patches = throwingPatches(surfaces, [0, 1, 0]);

  it('lets each ray to the wall through to one patch alone, and none past it', () => {
    const rays: [Vec3, Vec3, number][] = [
      [[1.1, 0.7, 0], [0, 0, -1], 1],
      [[-2.2, 2.7, 0.4], [0, 0, -1], 1],
      [[-1, 2.2, 0.4], [0.6, -0.48, -0.64], 1],
      [[0.9, 3.2, 0], [0, 0, -1], 0],
      [[3.1, 1, 0], [0, 0, -1], 0],
    ];
    for (const [from, toSky, expected] of rays) {
      const through = patches.filter((patch) => passes(beforePatch(surfaces, 1, patch), from, toSky));
      expect(through, `from ${from.join(' ')}`).toHaveLength(expected);
    }
  });

  it('holds leaves and hedges before the wall, nothing beyond it, not the wall itself', () => {
    const [patch] = patches as [Patch];
    const before = beforePatch(surfaces, 1, patch);
    expect(before).toContain(leaf);
    expect(before).toContain(hedge);
    expect(before).not.toContain(beyond);
    expect(before).not.toContain(wall);
    expect(before).toHaveLength(3);
  });
});

describe('a gable', () => {
  /** In the north, its foot 3 m up. */
  const gable: Mesh = {
    shape: 'mesh',
    owner: 0,
    optics: { transmittance: 0, reflectance: 0.5 },
    triangles: [
      [-2, 3, -2],
      [2, 3, -2],
      [0, 4.5, -2],
    ].flat(),
  };
  const [patch, ...others] = throwingPatches([gable], [0, 1, 0]) as [Patch];

  it('throws light back as one triangle, whose points lie in it', () => {
    expect(others).toEqual([]);
    expect(patch).toMatchObject({ isHalf: true, normal: [0, 0, 1] });
    for (const [a, b] of [
      [0.1, 0.2],
      [0.9, 0.8],
      [0.97, 0.99],
      [0.3, 0.71],
    ] as const) {
      const [x, y] = pointOf(patch, a, b);
      expect(y).toBeGreaterThan(3);
      expect(y).toBeLessThan(4.5 - 0.75 * Math.abs(x) + 1e-9);
    }
  });

  it('is met by rays to it alone', () => {
    const scene = beforePatch([gable], 0, patch);
    expect(passes(scene, [0, 3.7, 0], [0, 0, -1])).toBe(true);
    expect(passes(scene, [1.5, 3.2, 0], [0, 0, -1])).toBe(true);
    expect(passes(scene, [1.5, 3.8, 0], [0, 0, -1])).toBe(false);
    expect(passes(scene, [-1.5, 4.2, 0], [0, 0, -1])).toBe(false);
  });

  it('fills of an upright sensor before it what a fine cut of it fills', () => {
    // Howell's contour form against 200 x 200 points of the triangle.
    const [point, normal] = [
      [0.4, 2.8, -0.6],
      [0, 0, -1],
    ] as [Vec3, Vec3];
    let sum = 0;
    const n = 200;
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < n; k++) {
        const [x, y, z] = pointOf(patch, (i + 0.5) / n, (k + 0.5) / n);
        const to: Vec3 = [x - point[0], y - point[1], z - point[2]];
        const far = length(to);
        sum += (to[2] / far) ** 2 / far ** 2 / n ** 2;
      }
    }
    const areaOfGable = 3;
    expect(seenShare(point, normal, patch)).toBeCloseTo((sum * areaOfGable) / Math.PI, 4);
    expect(seenShare([0, 3, -4], [0, 0, 1], patch)).toBe(0);
  });
});
