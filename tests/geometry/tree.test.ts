import { describe, expect, it } from 'vitest';
import {
  type Axis,
  placeBud,
  placeTree,
  radiusAtM,
  type Tree,
  withDescendants,
} from '../../src/geometry/tree.ts';
import { bearingDeg } from '../../src/geometry/world.ts';

const axis = (part: Partial<Axis> & Pick<Axis, 'id' | 'parentId' | 'path'>): Axis => ({
  name: part.id,
  kind: 'lateral',
  atM: 0,
  baseDiameterM: 0.04,
  tipDiameterM: 0.02,
  grownIn: 2024,
  condition: 'live',
  buds: [],
  foliage: null,
  pin: null,
  ...part,
});

const tree: Tree = {
  axes: [
    axis({
      id: 'trunk',
      kind: 'trunk',
      parentId: null,
      path: [
        [0, 0, 0],
        [0, 0.5, 0],
      ],
    }),
    axis({
      id: 'limb',
      parentId: 'trunk',
      atM: 0.4,
      path: [
        [0, 0, 0],
        [0.3, 0.1, 0],
      ],
    }),
    axis({
      id: 'twig',
      parentId: 'limb',
      atM: 0.1,
      path: [
        [0, 0, 0],
        [0, 0.2, 0],
      ],
    }),
    axis({
      id: 'other',
      parentId: 'trunk',
      atM: 0.5,
      path: [
        [0, 0, 0],
        [-0.3, 0.1, 0],
      ],
    }),
  ],
};

describe('the tree in the world', () => {
  it('hangs every axis on its parent, so that children follow', () => {
    const placed = placeTree(tree, { foot: [2, 0.3, -1], turnedDeg: 0 });
    expect(placed.get('limb')?.path[0]).toEqual([2, 0.7, -1]);
    const twig = placed.get('twig')?.path[0];
    expect(twig?.[0]).toBeCloseTo(2 + 0.1 * Math.cos(Math.atan2(0.1, 0.3)), 12);
  });

  it('turns with its pot, clockwise seen from above', () => {
    const placed = placeTree(tree, { foot: [0, 0, 0], turnedDeg: 90 });
    const tip = placed.get('limb')?.path[1];
    expect(bearingDeg([tip?.[0] ?? 0, 0, tip?.[2] ?? 0])).toBeCloseTo(180, 9);
  });

  it('tapers straight from base to tip and no further', () => {
    const trunk = placeTree(tree, { foot: [0, 0, 0], turnedDeg: 0 }).get('trunk');
    if (!trunk) throw new Error('no trunk');
    expect(radiusAtM(trunk, 0.25)).toBeCloseTo(0.015, 12);
    expect(radiusAtM(trunk, 9)).toBeCloseTo(0.01, 12);
  });

  it('sets a bud on the bark of its wood', () => {
    const trunk = placeTree(tree, { foot: [0, 0, 0], turnedDeg: 0 }).get('trunk');
    if (!trunk) throw new Error('no trunk');
    const bud = placeBud(trunk, { id: 'b', atM: 0.25, aroundDeg: 90, pin: null });
    expect(bud.point[0]).toBeCloseTo(0.015, 12);
    expect(bud.point[1]).toBeCloseTo(0.25, 12);
    expect(bud.along).toEqual([0, 1, 0]);
  });

  it('lists what goes when a limb goes', () => {
    expect(withDescendants(tree, 'limb')).toEqual(['limb', 'twig']);
    expect(withDescendants(tree, 'trunk')).toHaveLength(4);
  });

  it('refuses a child that comes before its parent', () => {
    const [trunk, limb] = tree.axes;
    if (!trunk || !limb) throw new Error('short tree');
    expect(() => placeTree({ axes: [limb, trunk] }, { foot: [0, 0, 0], turnedDeg: 0 })).toThrow(
      /before its parent/,
    );
  });
});
