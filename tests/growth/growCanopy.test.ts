import { assert, double, integer, property } from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Tree } from '../../src/geometry/tree.ts';
import { angleBetweenDeg, cross, distance, dot, length, type Vec3 } from '../../src/geometry/vec.ts';
import { turnAboutUpright } from '../../src/geometry/world.ts';
import type { Canopy } from '../../src/growth/canopy.ts';
import { type GrowthInput, growCanopy } from '../../src/growth/growCanopy.ts';
import { leafAreaM2 } from '../../src/growth/leafArea.ts';
import { figValues } from '../../src/species/fig.ts';
import { axis, pottedFig } from './figTree.ts';

const values = figValues({});
const grow = (more: Partial<GrowthInput> = {}): Canopy =>
  growCanopy({
    tree: pottedFig(),
    stance: { foot: [1.7, 0.31, -2.3], turnedDeg: 0 },
    values,
    heatGdd8: 1130,
    seed: 11,
    gone: new Set(),
    ...more,
  });
const buds = pottedFig().axes.flatMap((a) => a.buds.map((b) => b.id));
const corners = (canopy: Canopy, leaf: Canopy['leaves'][number]): Vec3[] =>
  canopy.outline.map(([u, v]) => {
    const [a, b] = [u * leaf.midribM, v * leaf.acrossScaleM];
    const at = (k: 0 | 1 | 2) => leaf.bladeFrom[k] + a * leaf.along[k] + b * leaf.across[k];
    return [at(0), at(1), at(2)];
  });

/** Area of a flat polygon in space (Newell). */
function areaInSpace(points: readonly Vec3[]): number {
  let sum: Vec3 = [0, 0, 0];
  points.forEach((p, i) => {
    const c = cross(p, points[(i + 1) % points.length] as Vec3);
    sum = [sum[0] + c[0], sum[1] + c[1], sum[2] + c[2]];
  });
  return length(sum) / 2;
}

const numbersIn = (value: unknown): number[] => {
  if (typeof value === 'number') return [value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
};

describe('a canopy grown from buds', () => {
  const canopy = grow();

  it('has a shoot for every bud, with a plain name that tells where it is', () => {
    expect(canopy.shoots.map((s) => s.id).toSorted()).toEqual(buds.toSorted());
    expect(canopy.shoots.find((s) => s.id === 'limb-3-lateral-2-b3')?.name).toBe(
      'Shoot 3 on limb 3 lateral 2',
    );
  });

  it('has one node and one leaf a node, numbered from the base', () => {
    expect(canopy.nodes.map((n) => [n.owner, n.node])).toEqual(canopy.leaves.map((l) => [l.owner, l.node]));
    for (const shoot of canopy.shoots) {
      const nodes = canopy.nodes.filter((n) => n.owner === shoot.owner);
      expect(nodes.map((n) => n.node)).toEqual(nodes.map((_, i) => i + 1));
      expect(nodes.at(-1)?.atM).toBeCloseTo(shoot.lengthM, 9);
    }
  });

  it('draws every blade with exactly the published area for its midrib', () => {
    for (const leaf of canopy.leaves) {
      expect(leaf.areaM2).toBe(leafAreaM2(leaf.midribM, values));
      expect(areaInSpace(corners(canopy, leaf)) / leaf.areaM2).toBeCloseTo(1, 9);
    }
    const sum = canopy.leaves.reduce((s, leaf) => s + leaf.areaM2, 0);
    expect(canopy.shoots.reduce((s, shoot) => s + shoot.leafAreaM2, 0)).toBeCloseTo(sum, 9);
  });

  it('gives blades two unit axes square to each other, and an upper face that looks up', () => {
    for (const { along, across } of canopy.leaves) {
      expect(length(along)).toBeCloseTo(1, 9);
      expect(length(across)).toBeCloseTo(1, 9);
      expect(dot(along, across)).toBeCloseTo(0, 9);
      expect(cross(across, along)[1]).toBeGreaterThan(0);
    }
  });

  it('hangs its grown blades at the mean inclination known, in all directions', () => {
    const grown = grow({ heatGdd8: 2500 }).leaves;
    const tilt = grown.map(({ along, across }) => angleBetweenDeg(cross(across, along), [0, 1, 0]));
    const mean = tilt.reduce((a, b) => a + b, 0) / tilt.length;
    expect(mean).toBeGreaterThan(31);
    expect(mean).toBeLessThan(39);
    for (const wind of [0, 1, 2, 3]) {
      const inQuarter = grown.filter(({ along }) => {
        const turned = turnAboutUpright(along, 90 * wind);
        return turned[0] > Math.abs(turned[2]);
      });
      expect(inQuarter.length / grown.length).toBeGreaterThan(0.15);
    }
  });

  it('asks for the light of each node at the foot of its own blade', () => {
    expect(canopy.nodes).toHaveLength(canopy.leaves.length);
    canopy.nodes.forEach(({ owner, node, point }, i) => {
      expect(canopy.leaves[i]).toMatchObject({ owner, node, bladeFrom: point });
    });
  });

  it('bends shoots up: they end steeper than they began', () => {
    const rise = (path: readonly Vec3[], i: number) => {
      const [a, b] = [path[i - 1] as Vec3, path[i] as Vec3];
      return (b[1] - a[1]) / distance(a, b);
    };
    const steeper = canopy.shoots.filter((s) => rise(s.path, s.path.length - 1) > rise(s.path, 1));
    expect(steeper.length / canopy.shoots.length).toBeGreaterThan(0.8);
  });

  it('holds only finite numbers, at any heat and seed (seed 4201)', () => {
    const heat = double({ min: -50, max: 3000, noNaN: true });
    assert(
      property(heat, integer(), (heatGdd8, seed) => {
        expect(numbersIn(grow({ heatGdd8, seed })).every(Number.isFinite)).toBe(true);
      }),
      { seed: 4201, numRuns: 12 },
    );
  });

  it('is the same for the same seed and another for another', () => {
    expect(grow()).toEqual(canopy);
    expect(grow({ seed: 12 }).leaves[3]).not.toEqual(canopy.leaves[3]);
  });

  it('has no shoot before leaf-out', () => {
    const early = grow({ heatGdd8: 30 });
    expect(early.shoots).toEqual([]);
    expect(early.leaves).toEqual([]);
    expect(early.owners).toHaveLength(canopy.owners.length);
  });

  it('refuses a heat sum that is no number', () => {
    expect(() => grow({ heatGdd8: Number.NaN })).toThrow(
      'growCanopy: the heat sum must be a number, got NaN',
    );
  });
});

describe('cutting before growth', () => {
  const cutAway = buds.filter((_, i) => i % 4 !== 1);

  it('makes the shoots that stay longer, leafier and larger-leaved, under the same names and numbers', () => {
    const [all, few] = [grow(), grow({ gone: new Set(cutAway) })];
    expect(few.shoots).toHaveLength(13);
    for (const shoot of few.shoots) {
      const before = all.shoots.find((s) => s.id === shoot.id);
      expect(before?.owner).toBe(shoot.owner);
      expect(before?.name).toBe(shoot.name);
      expect(shoot.vigour).toBeGreaterThan(before?.vigour ?? Infinity);
      expect(shoot.lengthM).toBeGreaterThan(before?.lengthM ?? Infinity);
      expect(shoot.leafAreaM2).toBeGreaterThan(before?.leafAreaM2 ?? Infinity);
      expect(shoot.vigour).toBeLessThanOrEqual(values.vigourHighest);
    }
  });

  it('changes nothing of a shoot but by the vigour it shares', () => {
    const [few, apart] = [grow({ gone: new Set(cutAway) }), grow({ notSharing: new Set(cutAway) })];
    expect(apart.shoots).toHaveLength(52);
    for (const shoot of few.shoots) {
      expect(apart.shoots.find((s) => s.id === shoot.id)).toEqual(shoot);
      const leavesOf = (canopy: Canopy) => canopy.leaves.filter((l) => l.owner === shoot.owner);
      expect(leavesOf(apart)).toEqual(leavesOf(few));
    }
  });

  it('takes the wood of a branch and all it carried', () => {
    const canopy = grow({ gone: new Set(['limb-2']) });
    const there = new Set([...canopy.wood, ...canopy.leaves, ...canopy.nodes].map((part) => part.owner));
    for (const owner of there) expect(canopy.owners[owner]?.id).not.toMatch(/^limb-2/);
    expect(canopy.shoots).toHaveLength(52 - 13);
  });
});

describe('a tree that stands elsewhere', () => {
  it('carries the same canopy, turned with its pot', () => {
    const [first, second] = [
      grow({ stance: { foot: [0, 0.31, 0], turnedDeg: 0 } }),
      grow({ stance: { foot: [3.1, 0.31, -4.7], turnedDeg: 77 } }),
    ];
    first.leaves.forEach((leaf, i) => {
      const turned = turnAboutUpright(leaf.bladeFrom, 77);
      const there = second.leaves[i]?.bladeFrom ?? [0, 0, 0];
      expect(distance([turned[0] + 3.1, turned[1], turned[2] - 4.7], there)).toBeLessThan(1e-9);
    });
  });

  it('keeps every blade that grows near the ground above it', () => {
    const low = (bearing: number): Tree => ({
      axes: [
        axis({
          id: 'trunk',
          kind: 'trunk',
          parentId: null,
          atM: 0,
          bearing,
          elevation: 4,
          lengthM: 0.7,
          baseM: 0.03,
          tipM: 0.02,
          buds: 9,
        }),
      ],
    });
    const canopy = grow({ tree: low(63), stance: { foot: [0, 0.02, 0], turnedDeg: 0 }, heatGdd8: 500 });
    const lowest = Math.min(...canopy.leaves.flatMap((leaf) => corners(canopy, leaf).map((p) => p[1])));
    expect(lowest).toBeGreaterThan(0.0099);
  });
});

describe('shoots that stand in leaf', () => {
  const trunk = axis({
    id: 'trunk',
    kind: 'trunk',
    parentId: null,
    atM: 0,
    bearing: 0,
    elevation: 88,
    lengthM: 0.5,
    baseM: 0.03,
    tipM: 0.025,
    buds: 0,
  });
  const shoot = (id: string, more = {}) =>
    axis(
      {
        id,
        kind: 'shoot',
        parentId: 'trunk',
        atM: 0.45,
        bearing: 130,
        elevation: 35,
        lengthM: 0.52,
        baseM: 0.013,
        tipM: 0.006,
        buds: 0,
      },
      { foliage: { count: 11, midribM: 0.183, source: 'measured' }, ...more },
    );

  it('keep the count and midrib that were measured, whatever the heat', () => {
    for (const heatGdd8 of [0, 1700]) {
      const canopy = grow({ tree: { axes: [trunk, shoot('first')] }, heatGdd8 });
      expect(canopy.leaves).toHaveLength(11);
      expect(canopy.leaves[5]?.midribM).toBeCloseTo(0.183, 3);
      expect(canopy.shoots[0]).toMatchObject({ id: 'first', name: 'first', baseDiameterM: 0.013 });
      expect(canopy.shoots[0]?.lengthM).toBeCloseTo(0.52, 9);
    }
  });

  it('have their leaves at their buds where each leaf has one', () => {
    const at = [0.03, 0.09, 0.17, 0.29, 0.31, 0.33, 0.37, 0.4, 0.44, 0.47, 0.5];
    const axilBuds = at.map((atM, i) => ({ id: `axil-${i}`, atM, aroundDeg: 0, pin: null }));
    const canopy = grow({ tree: { axes: [trunk, shoot('first', { buds: axilBuds })] } });
    expect(canopy.nodes.map((n) => n.atM)).toEqual(at);
    expect(canopy.shoots).toHaveLength(1);
  });

  it('are over-vigorous by the internodes they have, of a few leaves too', () => {
    const blindOf = (count: number, lengthM: number): number | undefined => {
      const path: readonly Vec3[] = [
        [0, 0, 0],
        [0, lengthM, 0],
      ];
      const foliage = { count, midribM: 0.12, source: 'measured' } as const;
      return grow({ tree: { axes: [trunk, shoot('first', { foliage, path })] } }).shoots[0]?.blindNodes;
    };
    // The longest internode is a third of the four, 6.7 and 13 cm; a ninth of the eleven, 4.6 and 9.3 cm.
    expect([blindOf(4, 0.2), blindOf(4, 0.4), blindOf(11, 0.41), blindOf(11, 0.83)]).toEqual([2, 4, 2, 4]);
  });

  it('carry no leaf when dead', () => {
    const canopy = grow({ tree: { axes: [trunk, shoot('first', { condition: 'dead' })] } });
    expect(canopy.leaves).toEqual([]);
    expect(canopy.wood.map((w) => w.owner)).toEqual([1, 2]);
  });
});
