import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../../src/document/treeFile.ts';
import { stanceOf } from '../../../src/document/views.ts';
import { writeTreeFile } from '../../../src/document/writeTreeFile.ts';
import { type Course, courseOf } from '../../../src/editor/drawing/course.ts';
import { drawAgain } from '../../../src/editor/drawing/drawAgain.ts';
import { drawBranch } from '../../../src/editor/drawing/drawBranch.ts';
import { type Look, seenAt, type Xy } from '../../../src/editor/drawing/look.ts';
import { onPlane, planeThrough, planeWords, roomOf, startOn } from '../../../src/editor/drawing/workPlane.ts';
import type { TreeAxis } from '../../../src/editor/edit.ts';
import { branchFigures } from '../../../src/editor/figures.ts';
import { type Path, pathLengthM, pointAt } from '../../../src/geometry/path.ts';
import { random01 } from '../../../src/geometry/random.ts';
import { placeTree } from '../../../src/geometry/tree.ts';
import { add, distance, scale, type Vec3 } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { smallTree } from '../smallTree.ts';
import { above, east, flatLook, nearLook, south } from './looks.ts';

const seed = 20270419;
const turned: TreeFile = {
  ...smallTree,
  standing: { ...smallTree.standing, turnedDeg: 90, at: [0.4, -0.7] },
};

const placedPath = (file: TreeFile, id: string): Path => {
  const placed = placeTree({ axes: file.axes }, stanceOf(file)).get(id);
  if (placed === undefined) throw new Error(`no ${id}`);
  return placed.path;
};

/** Pixels of a stroke along points of the world, as a hand would draw it through that eye. */
function strokeOver(look: Look, path: Path, count = 40): Xy[] {
  const lengthM = pathLengthM(path);
  return Array.from({ length: count }, (_, i) => seenAt(look, pointAt(path, (lengthM * i) / (count - 1))));
}

function drawn(file: TreeFile, parentId: string, look: Look, stroke: readonly Xy[], snapPx: number | null) {
  const first = stroke[0] as Xy;
  const start = startOn(file, parentId, look, ...first);
  const course = courseOf(stroke, { file, but: parentId, plane: start.plane, look, snapPx });
  if (course === null) throw new Error('nothing was drawn');
  return { start, course, edited: drawBranch(file, start, course.path) };
}

function madeOf({ edited }: { readonly edited: ReturnType<typeof drawBranch> }): {
  file: TreeFile;
  made: TreeAxis;
} {
  if (!edited.ok) throw new Error(edited.reason);
  const made = edited.file.axes.find(({ id }) => id === edited.select);
  if (made === undefined) throw new Error('nothing is selected');
  return { file: edited.file, made };
}

const largestGapM = (a: Path, b: Path): number => {
  let most = 0;
  for (let share = 0; share <= 1; share += 0.05) {
    most = Math.max(most, distance(pointAt(a, share * pathLengthM(a)), pointAt(b, share * pathLengthM(b))));
  }
  return most;
};

describe('a branch drawn from another', () => {
  it('starts on the centre line of its parent where the hand pressed, and ends where it let go', () => {
    const look = flatLook(south);
    const from = pointAt(placedPath(smallTree, 'east'), 0.3);
    const to = add(from, [0.22, 0.31, 0]);
    const [x, y] = seenAt(look, from);
    // The press is 4 pixels beside the centre line, at a right angle to it.
    const { made } = madeOf(drawn(smallTree, 'east', look, [[x + 2.9, y + 2.8], seenAt(look, to)], null));
    expect(made.parentId).toBe('east');
    expect(made.atM).toBeCloseTo(0.3, 2);
    expect(made.kind).toBe('lateral');
    expect(made.path).toHaveLength(2);
    expect(made.path[1]?.[0]).toBeCloseTo(0.22, 2);
    expect(made.path[1]?.[1]).toBeCloseTo(0.31, 2);
  });

  it.each([
    ['south', south, 2],
    ['east', east, 0],
    ['above', above, 1],
  ] as const)('from the %s has no depth, to the last bit', (_, facing, depth) => {
    const look = flatLook(facing);
    for (const file of [smallTree, turned]) {
      const from = pointAt(placedPath(file, 'west'), 0.21);
      const way = [0, 1, 2].map((k) => (k === depth ? 0.17 : 0.11 + 0.07 * k)) as unknown as Vec3;
      const bow = strokeOver(look, [from, add(from, way), add(from, [0.35, 0.1, 0.11])]);
      const { file: next, made } = madeOf(drawn(file, 'west', look, bow, 24));
      const path = placedPath(next, made.id);
      for (const point of path) expect(point[depth] - (path[0] as Vec3)[depth]).toBe(0);
      expect(made.path.length).toBeGreaterThan(2);
    }
  });

  it('can be written, read again and drawn on', () => {
    const look = flatLook(south);
    const from = pointAt(placedPath(smallTree, 'lateral'), 0.2);
    const { file, made } = madeOf(
      drawn(smallTree, 'lateral', look, [seenAt(look, from), seenAt(look, add(from, [0.1, 0.4, 0]))], 8),
    );
    expect(made.kind).toBe('shoot');
    expect(made.foliage?.count).toBe(12);
    const read = parseTreeFile(writeTreeFile(file));
    expect(read.ok && read.file.axes.length).toBe(smallTree.axes.length + 1);
  });

  it('is straight when the hand was nearly so, and has few points when it was not', () => {
    const look = flatLook(south);
    const from = pointAt(placedPath(smallTree, 'west'), 0.4);
    const [x, y] = seenAt(look, from);
    const shaken = Array.from(
      { length: 50 },
      (_, i): Xy => [x - 3 * i + 2 * random01(seed, i), y - 2 * i + 2 * random01(seed, i, 1)],
    );
    expect(drawn(smallTree, 'west', look, shaken, null).course.path).toHaveLength(2);
    const bow = Array.from(
      { length: 90 },
      (_, i): Xy => [
        x - 80 * Math.sin(i / 57) + random01(seed, i),
        y - 80 + 80 * Math.cos(i / 57) + random01(seed, i, 1),
      ],
    );
    const { path } = drawn(smallTree, 'west', look, bow, null).course;
    expect(path.length).toBeGreaterThan(3);
    expect(path.length).toBeLessThanOrEqual(14);
  });

  it('is taken back by coming back to where it began', () => {
    const look = flatLook(south);
    const start = startOn(smallTree, 'west', look, 250, 300);
    const ask = { file: smallTree, but: 'west', plane: start.plane, look, snapPx: null };
    const [x, y] = seenAt(look, start.plane.through);
    expect(
      courseOf(
        [
          [x, y],
          [x - 90, y],
          [x - 3, y - 5],
        ],
        ask,
      ),
    ).toBeNull();
    expect(courseOf([[x, y]], ask)).toBeNull();
  });

  it('draws a lone trunk on from its end', () => {
    const bare = { ...smallTree, axes: smallTree.axes.slice(0, 1) };
    const look = flatLook(south);
    const tip = pointAt(placedPath(bare, 'trunk'), 1);
    const { file, made } = madeOf(
      drawn(bare, 'trunk', look, [seenAt(look, tip), seenAt(look, add(tip, [0.1, 0.5, 0]))], null),
    );
    expect(file.axes).toHaveLength(1);
    expect(made.id).toBe('trunk');
    expect(pathLengthM(made.path)).toBeCloseTo(0.47 + Math.hypot(0.1, 0.5), 2);
  });
});

describe('the plane of a stroke', () => {
  it('is named by what it goes through and from where it is seen', () => {
    expect(planeWords('East limb', south)).toBe('upright plane through East limb, seen from the south');
    expect(planeWords('Trunk', above)).toBe('level plane through Trunk, seen from above');
    expect(planeWords('Trunk', direction(135, 30))).toBe(
      'leaning plane through Trunk, seen from the south-east and above',
    );
  });

  it('takes no ray that grazes it under 10 degrees', () => {
    const plane = { through: [0, 0.5, 0] as Vec3, facing: south, words: '', room: roomOf(smallTree) };
    const grazing = (deg: number): Look => ({
      ...flatLook(south),
      sightAt: () => ({
        from: [-1, 0.5, 0.3],
        way: direction(90 - deg, 0).map((c, k) => (k === 2 ? -Math.abs(c) : c)) as unknown as Vec3,
        facing: south,
      }),
    });
    expect(onPlane(plane, grazing(9.9), 0, 0)).toBeNull();
    expect(onPlane(plane, grazing(10.1), 0, 0)).not.toBeNull();
  });

  it(`keeps all of 10 000 strokes within twice the radius of the tree, seed ${seed}`, () => {
    const { centre, radiusM } = roomOf(smallTree);
    const points = [...placeTree({ axes: smallTree.axes }, stanceOf(smallTree)).values()].flatMap(
      ({ path }) => path,
    );
    const treeM = Math.max(...points.map((point) => distance(point, centre)));
    expect(radiusM).toBeCloseTo(Math.max(1, 2 * treeM), 12);
    let [made, farthestM] = [0, 0];
    for (let n = 0; n < 10_000; n++) {
      const r = (k: number): number => random01(seed, n, k);
      const facing = direction(360 * r(1), 178 * r(2) - 89);
      const eye = add(centre, scale(facing, 1.1 + 4 * r(3)));
      const look = r(4) < 0.5 ? flatLook(facing, 60 + 500 * r(5)) : nearLook(eye, centre, 300 + 1500 * r(5));
      const parent = smallTree.axes[Math.floor(r(6) * smallTree.axes.length)] as TreeAxis;
      const at = pointAt(placedPath(smallTree, parent.id), r(7) * pathLengthM(parent.path));
      const [x, y] = seenAt(look, at);
      const stroke = Array.from(
        { length: 2 + Math.floor(6 * r(8)) },
        (_, i): Xy => [
          x + i * 900 * (random01(seed, n, 10 + i) - 0.5),
          y + i * 900 * (random01(seed, n, 30 + i) - 0.5),
        ],
      );
      const start = startOn(smallTree, parent.id, look, x, y);
      const snapPx = r(9) < 0.5 ? 24 : null;
      const course = courseOf(stroke, { file: smallTree, but: parent.id, plane: start.plane, look, snapPx });
      if (course === null) continue;
      made += 1;
      for (const point of course.path) farthestM = Math.max(farthestM, distance(point, centre));
    }
    expect(made).toBeGreaterThan(5000);
    expect(farthestM).toBeLessThanOrEqual(radiusM + 1e-9);
    // The bound is met, not merely far away.
    expect(farthestM).toBeGreaterThan(radiusM - 1e-6);
  });
});

describe('a branch drawn over in a second view', () => {
  const limbs: Readonly<Record<string, Path>> = {
    straight: [
      [0, 0, 0],
      [0.41, 0.73, 0.37],
    ],
    'bowed up': Array.from({ length: 30 }, (_, i): Vec3 => {
      const t = i / 29;
      return [0.6 * Math.sin(1.3 * t), 0.7 * t * t + 0.2 * t, 0.35 * t - 0.3 * t * t * t];
    }),
    'nearly level': Array.from({ length: 30 }, (_, i): Vec3 => {
      const t = i / 29;
      return [0.9 * t, 0.13 * t, 0.6 * t];
    }),
  };

  it.each(Object.keys(limbs))('has the course of a %s limb within 1 %% of its length', (name) => {
    const limb = limbs[name] as Path;
    const [front, side] = [flatLook(south), flatLook(east)];
    const base = pointAt(placedPath(smallTree, 'trunk'), 0.4);
    const wanted = limb.map((offset) => add(base, offset));
    const first = madeOf(drawn(smallTree, 'trunk', front, strokeOver(front, wanted), null));
    const plane = planeThrough(first.file, first.made.id, base, side.facing);
    const ask = { file: first.file, but: first.made.id, plane, look: side, snapPx: null };
    const again = drawAgain(ask, strokeOver(side, wanted));
    if (again === null || !again.edited.ok) throw new Error('not drawn again');
    const got = placedPath(again.edited.file, first.made.id);
    expect(largestGapM(wanted, got) / pathLengthM(wanted)).toBeLessThan(0.01);
    expect(got.length).toBeLessThanOrEqual(14);
  });

  it('keeps its depth to the last bit where the branch is straight, and takes its twigs along', () => {
    const look = flatLook(east);
    const path = placedPath(smallTree, 'east');
    const plane = planeThrough(smallTree, 'east', path[0] as Vec3, look.facing);
    const stroke = strokeOver(look, path).map(([x, y], i): Xy => [x + 2 * i, y]);
    const again = drawAgain({ file: smallTree, but: 'east', plane, look, snapPx: null }, stroke);
    if (again === null || !again.edited.ok) throw new Error('not drawn again');
    const tip = (file: TreeFile): Vec3 => placedPath(file, 'east').at(-1) as Vec3;
    expect(tip(again.edited.file)[0]).toBe(tip(smallTree)[0]);
    expect(tip(again.edited.file)[2]).toBeCloseTo(tip(smallTree)[2] - 78 / 240, 6);
    const before = smallTree.axes.find(({ id }) => id === 'lateral') as TreeAxis;
    const after = again.edited.file.axes.find(({ id }) => id === 'lateral') as TreeAxis;
    const share = (file: TreeFile, axis: TreeAxis): number =>
      axis.atM / branchFigures(file.axes.find(({ id }) => id === 'east') as TreeAxis).lengthM;
    expect(share(again.edited.file, after)).toBeCloseTo(share(smallTree, before), 1);
  });

  it('may be drawn from its tip to its base', () => {
    const look = flatLook(east);
    const path = placedPath(smallTree, 'east');
    const plane = planeThrough(smallTree, 'east', path[0] as Vec3, look.facing);
    const ask = { file: smallTree, but: 'east', plane, look, snapPx: null };
    const stroke = strokeOver(look, path).map(([x, y], i): Xy => [x - i, y - i]);
    expect(drawAgain(ask, stroke.toReversed())?.path).toEqual(drawAgain(ask, stroke)?.path);
  });
});

describe('snapping', () => {
  const look = flatLook(south);
  const from = pointAt(placedPath(smallTree, 'west'), 0.3);
  const [x, y] = seenAt(look, from);
  const course = (to: Xy, eye: Look, snapPx: number | null): Course => {
    const first = seenAt(eye, from);
    return drawn(smallTree, 'west', eye, [first, to], snapPx).course;
  };
  const offset = ({ path }: Course): Vec3 =>
    (path.at(-1) as Vec3).map((c, k) => c - (path[0] as Vec3)[k as 0 | 1 | 2]) as unknown as Vec3;

  it('settles a straight stroke upright and level, and says so', () => {
    const upright = course([x + 4, y - 190], look, 8);
    expect(upright.snap?.words).toBe('upright');
    expect(offset(upright)[0]).toBe(0);
    const level = course([x - 190, y + 5], look, 8);
    expect(level.snap?.words).toBe('level');
    expect(offset(level)[1]).toBe(0);
    expect(course([x + 10, y - 190], look, 8).snap).toBeNull();
    expect(course([x + 10, y - 190], look, 24).snap?.kind).toBe('upright');
  });

  it('settles on bearings of 15 degrees from above', () => {
    const top = flatLook(above);
    const at = (bearing: number): Xy => seenAt(top, add(from, scale(direction(bearing, 0), 0.7)));
    expect(course(at(31.5), top, 8).snap?.words).toBe('bearing 30°');
    expect(course(at(271), top, 8).snap?.words).toBe('due west');
    expect(course(at(37), top, 8).snap).toBeNull();
  });

  it('meets wood within 24 pixels of a finger and 8 of a mouse, without a change of depth', () => {
    const [tipX, tipY] = seenAt(look, placedPath(smallTree, 'shoot-1').at(-1) as Vec3);
    const met = course([tipX + 4, tipY - 5], look, 8);
    expect(met.snap?.words).toBe('meets Shoot 1');
    expect(seenAt(look, met.path.at(-1) as Vec3)[0]).toBeCloseTo(tipX, 6);
    expect(offset(met)[2]).toBe(0);
    expect(course([tipX + 12, tipY - 13], look, 8).snap).toBeNull();
    expect(course([tipX + 12, tipY - 13], look, 24).snap?.kind).toBe('branch');
  });

  it('never happens when it is off', () => {
    for (let n = 0; n < 2000; n++) {
      const to: Xy = [x + 250 * (random01(seed, n, 91) - 0.5), y + 250 * (random01(seed, n, 92) - 0.5)];
      if (Math.hypot(to[0] - x, to[1] - y) < 20) continue;
      const free = course(to, look, null);
      expect(free.snap).toBeNull();
      const [endX, endY] = seenAt(look, free.path.at(-1) as Vec3);
      expect(Math.hypot(endX - to[0], endY - to[1])).toBeLessThan(1e-6);
    }
  });
});
