import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TreeFile } from '../../../src/document/treeFile.ts';
import { stanceOf } from '../../../src/document/views.ts';
import type { TreeAxis } from '../../../src/editor/edit.ts';
import { aroundParentDeg } from '../../../src/editor/edits/turnRound.ts';
import { branchFigures } from '../../../src/editor/figures.ts';
import { handlePlaces } from '../../../src/editor/pull/handlePlaces.ts';
import type { Held, HeldName } from '../../../src/editor/pull/held.ts';
import { type Pull, pull } from '../../../src/editor/pull/pull.ts';
import type { Sight } from '../../../src/editor/pull/sight.ts';
import { pathLengthM } from '../../../src/geometry/path.ts';
import { placeTree } from '../../../src/geometry/tree.ts';
import {
  add,
  angleBetweenDeg,
  distance,
  normalize,
  scale,
  sub,
  type Vec3,
} from '../../../src/geometry/vec.ts';
import { direction, turnDeg } from '../../../src/geometry/world.ts';
import { smallTree } from '../smallTree.ts';

const seed = 20270331;
const none: Held = new Set();
const held = (...names: HeldName[]): Held => new Set(names);

const sides: Readonly<Record<string, Vec3>> = {
  north: [0, 0, -1],
  east: [1, 0, 0],
  south: [0, 0, 1],
  west: [-1, 0, 0],
  above: [0, 1, 0],
};
/** The coordinate that a view does not show. */
const depthOf = (facing: Vec3): number => facing.findIndex((c) => Math.abs(c) === 1);

/** An eye so far away that all rays run side by side, over a point of the world. */
const flatSight = (facing: Vec3, over: Vec3): Sight => ({
  from: add(over, scale(facing, 60)),
  way: scale(facing, -1),
  facing,
});
/** An eye at a place of its own. */
const nearSight = (eye: Vec3, facing: Vec3, over: Vec3): Sight => ({
  from: eye,
  way: normalize(sub(over, eye)),
  facing,
});

const axisIn = (file: TreeFile, id: string): TreeAxis => file.axes.find((a) => a.id === id) as TreeAxis;
const places = (file: TreeFile, id: string) => {
  const found = handlePlaces(file, id);
  if (found === null) throw new Error(`no ${id}`);
  return found;
};

function made(file: TreeFile, id: string, how: Pull, locked: Held = none): TreeFile {
  const edited = pull(file, id, how, locked);
  if (!edited.ok) throw new Error(edited.reason);
  return edited.file;
}

const tipTo = (file: TreeFile, id: string, facing: Vec3, over: Vec3, locked: Held = none) =>
  made(file, id, { by: 'tip', sight: flatSight(facing, over) }, locked);

describe('a tip pulled in a standard view', () => {
  it.each(Object.entries(sides))(
    'from the %s lies under the hand and keeps its depth to the last bit',
    (_, facing) => {
      const { tip } = places(smallTree, 'east');
      const over = add(tip, [0.071, 0.053, -0.067]);
      const next = tipTo(smallTree, 'east', facing, over);
      const depth = depthOf(facing);
      const moved = places(next, 'east').tip;
      for (const i of [0, 1, 2]) expect(moved[i]).toBeCloseTo((i === depth ? tip : over)[i] as number, 12);
      for (const id of ['east', 'lateral', 'shoot-1', 'shoot-2']) {
        const [before, after] = [axisIn(smallTree, id).path, axisIn(next, id).path];
        for (const [i, point] of after.entries()) expect(point[depth]).toBe(before[i]?.[depth]);
      }
      expect(axisIn(next, 'west')).toBe(axisIn(smallTree, 'west'));
    },
  );

  it('keeps the depth after a hundred pulls in a row', () => {
    let file = smallTree;
    for (let n = 0; n < 100; n++) {
      const { tip } = places(file, 'east');
      file = tipTo(
        file,
        'east',
        sides['south'] as Vec3,
        add(tip, [0.011 * Math.sin(n), 0.013 * Math.cos(n), 0]),
      );
    }
    expect(axisIn(file, 'east').path.map(([, , z]) => z)).toEqual([0, -0.03, -0.05]);
  });

  it('reaches any length, side and angle by a pull from the side and one from above', () => {
    const wanted = direction(143, 31);
    const { base } = places(smallTree, 'west');
    const to = add(base, scale(wanted, 0.613));
    const fromAbove = tipTo(smallTree, 'west', [0, 1, 0], to);
    const figures = branchFigures(axisIn(tipTo(fromAbove, 'west', [0, 0, 1], to), 'west'));
    expect(figures.bearingDeg).toBeCloseTo(143, 6);
    expect(figures.fromUprightDeg).toBeCloseTo(59, 6);
    expect(figures.lengthM).toBeCloseTo(0.613, 9);
  });

  it('carries what grows on the branch along and turns it as the branch turns', () => {
    const { tip, base } = places(smallTree, 'east');
    const next = tipTo(
      smallTree,
      'east',
      [0, 0, 1],
      [base[0] - (tip[1] - base[1]), base[1] + tip[0] - base[0], tip[2]],
    );
    const [, [x, y] = []] = axisIn(smallTree, 'lateral').path;
    const [, [turnedX, turnedY] = []] = axisIn(next, 'lateral').path;
    expect(turnedX).toBeCloseTo(-(y as number), 12);
    expect(turnedY).toBeCloseTo(x as number, 12);
    expect(places(next, 'lateral').base).not.toEqual(places(smallTree, 'lateral').base);
  });

  it('moves the tip of a branch that points at the eye without turning it over', () => {
    const flat = {
      ...smallTree,
      axes: smallTree.axes.map((a) =>
        a.id === 'west'
          ? {
              ...a,
              path: [
                [0, 0, 0],
                [0.003, 0.004, 0.5],
              ] as TreeAxis['path'],
            }
          : a,
      ),
    };
    const { tip } = places(flat, 'west');
    const next = tipTo(flat, 'west', [0, 0, 1], add(tip, [0.2, 0.1, 0]));
    expect(distance(places(next, 'west').tip, add(tip, [0.2, 0.1, 0]))).toBeLessThan(1e-12);
    expect(axisIn(next, 'west').path[1]?.[2]).toBe(0.5);
    const kept = tipTo(flat, 'west', [0, 0, 1], add(tip, [0.2, 0.1, 0]), held('length'));
    expect(pathLengthM(axisIn(kept, 'west').path)).toBeCloseTo(pathLengthM(axisIn(flat, 'west').path), 12);
    const [x, y] = places(kept, 'west').tip;
    expect(Math.hypot(x - tip[0] - 0.2, y - tip[1] - 0.1)).toBeLessThan(1e-9);
  });
});

describe('a tip pulled in any view', () => {
  it(`lies under the hand (seed ${seed})`, () => {
    const metre = fc.double({ min: -0.4, max: 0.4, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: -5, max: 80, noNaN: true }),
        fc.tuple(metre, metre),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (bearing, elevation, [across, upwards], turnedDeg) => {
          const file = {
            ...smallTree,
            standing: { ...smallTree.standing, turnedDeg, at: [0.7, -1.3] as [number, number] },
          };
          const { tip } = places(file, 'east');
          const facing = direction(bearing, elevation);
          const beside: Vec3 = direction(bearing + 90, 0);
          const over = add(tip, [across * beside[0], upwards, across * beside[2]]);
          const edited = pull(
            file,
            'east',
            { by: 'tip', sight: nearSight(add(tip, scale(facing, 3.7)), facing, over) },
            none,
          );
          if (!edited.ok) return;
          const eye = add(tip, scale(facing, 3.7));
          const next = places(edited.file, 'east').tip;
          expect(angleBetweenDeg(sub(next, eye), sub(over, eye))).toBeLessThan(1e-5);
          expect(Math.abs(distance(next, tip))).toBeLessThan(2);
        },
      ),
      { seed, numRuns: 300 },
    );
  });

  it('is refused where the line of sight runs along the work plane', () => {
    const { tip } = places(smallTree, 'east');
    const sight = { from: add(tip, [0, 0.1, 5]), way: [0, 0, -1] as Vec3, facing: direction(180, 84) };
    expect(pull(smallTree, 'east', { by: 'tip', sight }, none).ok).toBe(false);
  });
});

describe('locked figures', () => {
  const locks: readonly (readonly HeldName[])[] = [
    ['length'],
    ['side'],
    ['upright'],
    ['length', 'side'],
    ['length', 'upright'],
    ['side', 'upright'],
    ['length', 'side', 'upright'],
  ];
  it.each(locks.map((names) => [names.join(', '), names] as const))(
    `of %s hold whatever the hand does (seed ${seed})`,
    (_, names) => {
      const metre = fc.double({ min: -0.4, max: 0.4, noNaN: true });
      const before = branchFigures(axisIn(smallTree, 'east'));
      let told = 0;
      fc.assert(
        fc.property(fc.constantFrom(...Object.values(sides)), fc.tuple(metre, metre, metre), (facing, by) => {
          const over = add(places(smallTree, 'east').tip, by);
          const edited = pull(
            smallTree,
            'east',
            { by: 'tip', sight: flatSight(facing, over) },
            held(...names),
          );
          if (!edited.ok) return;
          const after = branchFigures(axisIn(edited.file, 'east'));
          const off = {
            length: after.lengthM - before.lengthM,
            side: turnDeg(before.bearingDeg, after.bearingDeg),
            upright: after.fromUprightDeg - before.fromUprightDeg,
            thickness: 0,
          };
          told++;
          for (const name of names) expect(Math.abs(off[name])).toBeLessThan(1e-6);
        }),
        { seed, numRuns: 100 },
      );
      expect(told).toBeGreaterThan(60);
    },
  );

  it('leave the rest to the hand: with the side locked the tip goes where the hand is, seen from beside', () => {
    const file = made(smallTree, 'east', {
      by: 'tip',
      sight: flatSight([0, 1, 0], add(places(smallTree, 'east').base, [0.5, 0, 0])),
    });
    const { base } = places(file, 'east');
    const next = tipTo(file, 'east', [0, 0, 1], add(base, [0.37, 0.21, 3]), held('side'));
    expect(distance(places(next, 'east').tip, add(base, [0.37, 0.21, 0]))).toBeLessThan(0.01);
  });

  it('with side and angle locked the length follows the hand along the branch', () => {
    const { base, tip } = places(smallTree, 'east');
    const way = normalize(sub(tip, base));
    const over = add(base, scale(way, 0.9));
    const next = tipTo(smallTree, 'east', [0, 0, 1], over, held('side', 'upright'));
    expect(distance(places(next, 'east').tip, over)).toBeLessThan(1e-9);
  });

  it('keep a thickness', () => {
    expect(pull(smallTree, 'east', { by: 'thickness', times: 1.3 }, held('thickness')).ok).toBe(false);
    expect(
      axisIn(made(smallTree, 'east', { by: 'thickness', times: 1.3 }), 'east').baseDiameterM,
    ).toBeCloseTo(0.0273, 12);
  });
});

describe('a bend', () => {
  it('moves under the hand with depth kept, its ends stay, and what grows there goes with it', () => {
    const { bends, tip, base } = places(smallTree, 'east');
    const to = add(bends[0] as Vec3, [0.037, -0.059, 0.9]);
    const next = made(smallTree, 'east', { by: 'bend', nth: 0, sight: flatSight([0, 0, 1], to) });
    const after = places(next, 'east');
    expect(after.bends[0]?.[0]).toBeCloseTo(to[0], 12);
    expect(after.bends[0]?.[1]).toBeCloseTo(to[1], 12);
    expect(axisIn(next, 'east').path.map(([, , z]) => z)).toEqual([0, -0.03, -0.05]);
    expect(distance(after.tip, tip)).toBeLessThan(1e-12);
    expect(distance(after.base, base)).toBeLessThan(1e-12);
    const placed = (file: TreeFile) =>
      placeTree({ axes: file.axes }, stanceOf(file)).get('lateral')?.path[0] as Vec3;
    expect(distance(placed(next), placed(smallTree))).toBeGreaterThan(0.02);
    expect(distance(placed(next), after.bends[0] as Vec3)).toBeLessThan(
      distance(placed(smallTree), bends[0] as Vec3) + 0.08,
    );
  });

  it('gives a straight branch its first bend', () => {
    const { bends } = places(smallTree, 'west');
    const to = add(bends[0] as Vec3, [0.031, 0.047, 0]);
    const next = made(smallTree, 'west', { by: 'bend', nth: 0, sight: flatSight([0, 0, 1], to) });
    expect(axisIn(next, 'west').path).toHaveLength(3);
    expect(distance(places(next, 'west').bends[0] as Vec3, to)).toBeLessThan(1e-12);
  });

  it('keeps a locked length', () => {
    const { bends } = places(smallTree, 'east');
    const to = add(bends[0] as Vec3, [0.08, -0.11, 0]);
    const next = made(
      smallTree,
      'east',
      { by: 'bend', nth: 0, sight: flatSight([0, 0, 1], to) },
      held('length'),
    );
    expect(branchFigures(axisIn(next, 'east')).lengthM).toBeCloseTo(
      branchFigures(axisIn(smallTree, 'east')).lengthM,
      9,
    );
  });
});

describe('the base', () => {
  it('slides along the wood it grows from and stops at its ends', () => {
    const { path } = placeTree({ axes: smallTree.axes }, stanceOf(smallTree)).get('trunk') as {
      path: readonly Vec3[];
    };
    const [, middle] = path as [Vec3, Vec3, Vec3];
    const sight = flatSight([0, 0, 1], middle);
    expect(axisIn(made(smallTree, 'east', { by: 'base', sight }), 'east').atM).toBeCloseTo(
      Math.hypot(0.01, 0.23, 0.02),
      6,
    );
    const high = flatSight([0, 0, 1], add(middle, [0, 3, 0]));
    expect(axisIn(made(smallTree, 'east', { by: 'base', sight: high }), 'east').atM).toBeCloseTo(
      pathLengthM(path),
      9,
    );
  });

  it('turns round the wood to where the hand is on the ring', () => {
    const { base, parent } = places(smallTree, 'east');
    const radiusM = 0.11;
    const out = parent?.round[5] as Vec3;
    const sight = flatSight([0, 1, 0], add(base, scale(out, radiusM)));
    const next = made(smallTree, 'east', { by: 'round', radiusM, sight });
    expect(turnDeg(75, aroundParentDeg(next, axisIn(next, 'east')) as number)).toBeCloseTo(0, 0);
    expect(branchFigures(axisIn(next, 'east')).lengthM).toBeCloseTo(
      branchFigures(axisIn(smallTree, 'east')).lengthM,
      9,
    );
  });

  it('of the trunk is not moved', () => {
    const sight = flatSight([0, 0, 1], [0, 1, 0]);
    expect(pull(smallTree, 'trunk', { by: 'base', sight }, none).ok).toBe(false);
    expect(pull(smallTree, 'trunk', { by: 'round', radiusM: 0.1, sight }, none).ok).toBe(false);
  });
});
