import { describe, expect, it } from 'vitest';
import { budMark, cutMark } from '../../../src/ui/scene/cutMark.ts';
import { pointsOf } from '../../../src/ui/scene/extent.ts';
import { ownerOf } from '../../../src/ui/scene/owner.ts';
import { isSoftware } from '../../../src/ui/scene/renderer.ts';
import { onGround } from '../../../src/ui/scene/shadow.ts';
import { slabOf, standsBetween } from '../../../src/ui/scene/slab.ts';
import { aboveHorizon } from '../../../src/ui/scene/sunRuns.ts';
import { smallTree } from '../../editor/smallTree.ts';
import { smallCanopy } from './smallCanopy.ts';

describe('cutMark', () => {
  it('marks a removal clear of the wood it comes from', () => {
    const mark = cutMark(smallCanopy, { id: 'c1', kind: 'remove', target: 'limb', atM: 0 }, '3');
    const point = mark?.point ?? [0, 0, 0];
    expect(Math.hypot(point[0], point[1] - 0.7)).toBeCloseTo(1.2 * 0.025, 9);
    expect(mark).toMatchObject({ id: 'c1', text: '3', kind: 'remove' });
  });

  it('marks a tip at its distance along the branch, over a bend', () => {
    const firstM = Math.hypot(0.3, 0.2);
    const mark = cutMark(smallCanopy, { id: 'c2', kind: 'tip', target: 'limb', atM: firstM + 0.125 }, '1');
    expect(mark?.point[0]).toBeCloseTo(0.375, 9);
    expect(mark?.point[1]).toBeCloseTo(1, 9);
    expect(mark?.along[0]).toBeCloseTo(0.6, 9);
    expect(mark?.radiusM).toBeCloseTo(0.0095, 9);
  });

  it('marks a bud that has not grown on the bark where it sits', () => {
    const bud = {
      id: 'b4',
      axisId: 'limb',
      point: [0.2, 0.8, 0.1],
      outward: [0, 0, 1],
      along: [1, 0, 0],
    } as const;
    const mark = budMark(bud, { id: 'rub off bud:b4', kind: 'rub off bud' }, '17');
    expect(mark).toMatchObject({ text: '17', point: [0.2, 0.8, 0.1], along: [0, 0, 1] });
  });

  it('shows a bud that has grown where it sat', () => {
    expect(pointsOf(smallCanopy, smallTree, 'bud-7')).toEqual([[0.01, 0.75, -0.025]]);
    expect(pointsOf(smallCanopy, smallTree, 'shoot').length).toBeGreaterThan(4);
  });

  it('knows no mark for wood that is not there', () => {
    expect(cutMark(smallCanopy, { id: 'c3', kind: 'remove', target: 'sucker', atM: 0 }, '1')).toBeNull();
    expect(ownerOf(smallCanopy, 'sucker')).toBe(0);
    expect(ownerOf(smallCanopy, 'bud-7')).toBe(4);
    expect(ownerOf(smallCanopy, null)).toBe(0);
  });
});

describe('surroundings', () => {
  const wall = slabOf({
    kind: 'wall',
    name: 'north wall',
    from: [-4.1, 1.6],
    to: [3.3, 1.9],
    heightM: 3.4,
    thicknessM: 0.4,
    reflectance: 0.5,
  });

  it('knows when a wall stands between the eye and the tree', () => {
    expect(standsBetween(wall, [0, 0, 0], [0.4, 1, -6])).toBe(true);
    expect(standsBetween(wall, [0, 0, 0], [0.4, 1, 6])).toBe(false);
    expect(standsBetween(wall, [0, 0, 0], [0.4, 1, -1.2])).toBe(false);
    // Past the western end of the wall.
    expect(standsBetween(wall, [0, 0, 0], [-9, 1, -2.5])).toBe(false);
  });

  it('stands a wall along its line, as tall as it is', () => {
    expect(wall.centre[0]).toBeCloseTo(-0.4, 9);
    expect(wall.centre[1]).toBeCloseTo(1.7, 9);
    expect(wall.centre[2]).toBeCloseTo(-1.75, 9);
    // Turned by its bend towards the north, about the upright.
    expect(Math.tan(wall.turnedRad)).toBeCloseTo(0.3 / 7.4, 9);
  });

  it('turns a box clockwise, seen from above', () => {
    const box = slabOf({
      kind: 'box',
      name: 'shed',
      centre: [3, 0],
      sizeM: [4, 0.6, 2],
      turnedDeg: 30,
      reflectance: 0.3,
    });
    // Its long side now runs from north-west to south-east.
    expect(standsBetween(box, [3, 0, 0], [3 + 1.6 * Math.cos(0.5236), 0, 1.6 * Math.sin(0.5236)])).toBe(true);
    expect(standsBetween(box, [4.4, 0, -0.9], [4.4, 0, -1.5])).toBe(false);
  });
});

describe('sun and shadow', () => {
  it('throws a shadow away from the sun', () => {
    const [x, z] = onGround([0.3, 2, -0.1], [0.6, 0.5, 0.2]);
    expect(x).toBeCloseTo(0.3 - 2.4, 9);
    expect(z).toBeCloseTo(-0.1 - 0.8, 9);
  });

  it('draws the sun above the horizon only, and breaks at midnight below it', () => {
    const point = (azimuthDeg: number, altitudeDeg: number) => ({ azimuthDeg, altitudeDeg, label: null });
    const path = [point(10, 2), point(30, -1), point(80, 4), point(100, 20), point(280, -3)];
    expect(aboveHorizon(path).map((run) => run.map((p) => p.azimuthDeg))).toEqual([[10], [80, 100]]);
    expect(aboveHorizon([point(0, -9)])).toEqual([]);
  });

  it('knows a renderer without a graphics card by its name', () => {
    expect(
      isSoftware('ANGLE (Google, Vulkan 1.3.0 (SwiftShader Device (Subzero)), SwiftShader driver)'),
    ).toBe(true);
    expect(isSoftware('llvmpipe (LLVM 15.0.6, 256 bits)')).toBe(true);
    expect(isSoftware('Mali-G78')).toBe(false);
  });
});
