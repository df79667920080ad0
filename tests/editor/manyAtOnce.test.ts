import { describe, expect, it } from 'vitest';
import { axisOf, type Edited, type TreeAxis } from '../../src/editor/edit.ts';
import { createEditor } from '../../src/editor/editor.ts';
import { bowedPath } from '../../src/editor/edits/add.ts';
import { copyRound, mirror } from '../../src/editor/edits/copy.ts';
import { markMany, removeMany, thinEverySecond } from '../../src/editor/edits/many.ts';
import { reshape } from '../../src/editor/edits/reshape.ts';
import { setAlong } from '../../src/editor/edits/setAlong.ts';
import { aroundParentDeg, turnRound } from '../../src/editor/edits/turnRound.ts';
import { branchFigures, chord } from '../../src/editor/figures.ts';
import { pathLengthM, tangentAt } from '../../src/geometry/path.ts';
import { placeBud, placeTree } from '../../src/geometry/tree.ts';
import { angleBetweenDeg, length, sub, type Vec3 } from '../../src/geometry/vec.ts';
import { turnAboutUpright, turnDeg } from '../../src/geometry/world.ts';
import { smallTree } from './smallTree.ts';

function made(edited: Edited) {
  if (!edited.ok) throw new Error(`refused: ${edited.reason}`);
  return edited.file;
}

const added = (file: typeof smallTree): TreeAxis[] => file.axes.slice(smallTree.axes.length);
const side = (axis: TreeAxis): number => branchFigures(axis).bearingDeg;
const far = (a: Vec3, b: Vec3): number => length(sub(a, b));

describe('a limb copied round the trunk', () => {
  const file = made(copyRound(smallTree, 'east', { count: 3, stepM: 0.04 }));
  const limbs = added(file).filter((axis) => axis.kind === 'scaffold');

  it('stands evenly round it, each higher by the step, with all that grows on it', () => {
    expect(limbs.map((limb) => turnDeg(side(axisOf(smallTree, 'east')), side(limb)))).toEqual([
      expect.closeTo(120, 6),
      expect.closeTo(-120, 6),
    ]);
    expect(limbs.map((limb) => limb.atM)).toEqual([expect.closeTo(0.35, 9), expect.closeTo(0.39, 9)]);
    expect(added(file)).toHaveLength(8);
    expect(added(file).map((axis) => axis.kind)).toEqual([
      'scaffold',
      'lateral',
      'shoot',
      'shoot',
      'scaffold',
      'lateral',
      'shoot',
      'shoot',
    ]);
    for (const limb of limbs)
      expect(branchFigures(limb).lengthM).toBeCloseTo(branchFigures(axisOf(smallTree, 'east')).lengthM, 9);
  });

  it('is named after its own side, and so is what grows on it', () => {
    const parts = ['', ', lateral', ', Shoot 1', ', Shoot 2'];
    expect(added(file).map((axis) => axis.name)).toEqual(
      ['South-west limb', 'North-west limb'].flatMap((limb) => parts.map((part) => limb + part)),
    );
  });

  it('is refused where the last would be beyond the tip of the trunk, and for the trunk', () => {
    expect(copyRound(smallTree, 'east', { count: 4, stepM: 0.1 })).toMatchObject({ ok: false });
    expect(copyRound(smallTree, 'trunk', { count: 3, stepM: 0 })).toMatchObject({ ok: false });
    expect(copyRound(smallTree, 'east', { count: 2.5, stepM: 0 })).toEqual({
      ok: false,
      reason: 'The number of limbs in all must be a whole number, 2 to 12.',
    });
  });
});

describe('a limb mirrored', () => {
  it('points the other way at the same height, and twice mirrored lies as before', () => {
    const once = made(mirror(smallTree, 'east'));
    const [image] = added(once);
    if (image === undefined) throw new Error('nothing was added');
    const [x, y, z] = chord(axisOf(smallTree, 'east'));
    expect(far(chord(image), [-x, y, -z])).toBeLessThan(1e-9);
    const twice = made(mirror(once, image.id));
    const back = twice.axes.slice(once.axes.length);
    const original = ['east', 'lateral', 'shoot-1', 'shoot-2'].map((id) => axisOf(smallTree, id));
    back.forEach((axis, i) => {
      expect(far(chord(axis), chord(original[i] as TreeAxis))).toBeLessThan(1e-9);
    });
    const around = back.flatMap((axis) => axis.buds.map((bud) => bud.aroundDeg));
    expect(around).toEqual([expect.closeTo(31, 1)]);
    const [bud] = (added(once)[1] as TreeAxis).buds;
    expect(bud?.aroundDeg).toBeCloseTo(329, 1);
  });
});

describe('wood that is turned', () => {
  it('takes its buds along on the bark', () => {
    const upright = made(reshape(smallTree, 'lateral', { fromUprightDeg: 0.01 }));
    const outward = (file: typeof smallTree) => {
      const wood = placeTree({ axes: file.axes }, { foot: [0, 0, 0], turnedDeg: 0 }).get('lateral');
      const [bud] = axisOf(file, 'lateral').buds;
      if (wood === undefined || bud === undefined) throw new Error('no bud');
      return placeBud(wood, bud).outward;
    };
    const turned = made(reshape(upright, 'east', { bearingDeg: (side(axisOf(upright, 'east')) + 77) % 360 }));
    expect(far(outward(turned), turnAboutUpright(outward(upright), 77))).toBeLessThan(2e-4);
  });

  it('round its parent sits where it was asked to, at the same angle with it', () => {
    const file = made(turnRound(smallTree, 'lateral', 213));
    expect(aroundParentDeg(file, axisOf(file, 'lateral'))).toBeCloseTo(213, 6);
    const along = tangentAt(axisOf(file, 'east').path, 0.29);
    expect(angleBetweenDeg(along, chord(axisOf(file, 'lateral')))).toBeCloseTo(
      angleBetweenDeg(along, chord(axisOf(smallTree, 'lateral'))),
      6,
    );
    const before = angleBetweenDeg(chord(axisOf(smallTree, 'lateral')), chord(axisOf(smallTree, 'shoot-2')));
    const after = angleBetweenDeg(chord(axisOf(file, 'lateral')), chord(axisOf(file, 'shoot-2')));
    expect(after).toBeCloseTo(before, 6);
    expect(axisOf(file, 'west')).toBe(axisOf(smallTree, 'west'));
    expect(turnRound(smallTree, 'trunk', 10)).toMatchObject({ ok: false });
  });
});

const along = {
  what: 'buds' as const,
  count: 4,
  firstM: 0.05,
  spacingM: 0.11,
  aroundDeg: 20,
  divergenceDeg: 137.5,
  shootM: 0.43,
  leafCount: 7,
};

describe('buds and shoots set along a branch', () => {
  it('sit at the distances and turns asked for; buds take the place of those before', () => {
    const { buds } = axisOf(made(setAlong(smallTree, 'east', along)), 'east');
    expect(buds.map(({ atM }) => atM)).toEqual([0.05, 0.16, 0.27, 0.38].map((m) => expect.closeTo(m, 9)));
    expect(buds.map(({ aroundDeg }) => aroundDeg)).toEqual([20, 157.5, 295, 72.5]);
    expect(
      axisOf(made(setAlong(smallTree, 'lateral', { ...along, spacingM: 0.05 })), 'lateral').buds,
    ).toHaveLength(4);
  });

  it('grow as shoots that bend, as long and leafy as asked for', () => {
    const shoots = added(made(setAlong(smallTree, 'east', { ...along, what: 'shoots' })));
    expect(shoots.map((axis) => [axis.parentId, axis.kind, axis.foliage?.count])).toEqual(
      Array.from({ length: 4 }, () => ['east', 'shoot', 7]),
    );
    for (const axis of shoots) {
      expect(Math.abs(pathLengthM(axis.path) - 0.43)).toBeLessThan(0.002);
      expect(pathLengthM(axis.path) - length(chord(axis))).toBeGreaterThan(1e-4);
    }
    expect(shoots.map((axis) => axis.name)[3]).toBe('East limb, shoot 4');
  });

  it('are refused beyond the tip, with the figures that do not fit', () => {
    expect(setAlong(smallTree, 'east', { ...along, count: 6 })).toEqual({
      ok: false,
      reason: 'East limb is 58 cm long; the last one would sit at 60 cm. Set fewer, or nearer together.',
    });
    expect(setAlong(smallTree, 'east', { ...along, spacingM: 0 })).toMatchObject({ ok: false });
    expect(setAlong(smallTree, 'east', { ...along, divergenceDeg: Number.NaN })).toMatchObject({ ok: false });
  });
});

describe('many branches at once', () => {
  it('are marked each alone, and deleted with all that grows on them', () => {
    const marked = made(markMany(smallTree, ['shoot-1', 'west'], { condition: 'dead', pin: 'remove' }));
    expect(marked.axes.filter((axis) => axis.condition === 'dead').map((axis) => axis.id)).toEqual([
      'west',
      'shoot-1',
    ]);
    const fewer = removeMany(smallTree, ['shoot-1', 'lateral']);
    expect(fewer).toMatchObject({ ok: true, said: 'Deleted 3 branches' });
    expect(made(fewer).axes.map((axis) => axis.id)).toEqual(['trunk', 'east', 'west']);
    expect(removeMany(smallTree, ['trunk', 'west'])).toMatchObject({ ok: false });
    expect(markMany(smallTree, [], { pin: 'keep' })).toMatchObject({ ok: false });
  });

  it('are marked as carrying figs, and as carrying none', () => {
    const marked = made(markMany(smallTree, ['shoot-1', 'shoot-2'], { bearsFigs: true }));
    expect(marked.axes.filter((axis) => axis.bearsFigs).map((axis) => axis.id)).toEqual([
      'shoot-1',
      'shoot-2',
    ]);
    // Of the others nothing is told.
    expect(axisOf(marked, 'west')).not.toHaveProperty('bearsFigs');
    const picked = made(markMany(marked, ['shoot-2'], { bearsFigs: false }));
    expect(axisOf(picked, 'shoot-2').bearsFigs).toBe(false);
  });

  it('are thinned by every second shoot, those to be kept excepted, then by every second bud', () => {
    const thinned = made(thinEverySecond(smallTree, 'east'));
    expect(thinned.axes.map((axis) => axis.id)).not.toContain('shoot-2');
    expect(thinned.axes.map((axis) => axis.id)).toContain('shoot-1');
    const pinned = made(markMany(smallTree, ['shoot-2'], { pin: 'keep' }));
    expect(thinEverySecond(pinned, 'east')).toMatchObject({ ok: false });
    const inBud = made(setAlong(smallTree, 'west', along));
    expect(axisOf(made(thinEverySecond(inBud, 'west')), 'west').buds.map(({ atM }) => atM)).toEqual([
      expect.closeTo(0.05, 9),
      expect.closeTo(0.27, 9),
    ]);
  });
});

describe('a new branch', () => {
  it.each([
    [0, 12],
    [37, 251],
    [90, 0],
    [143, 88],
    [180, 199],
  ])('bows, %d degrees from upright, yet has its length, side and angle exactly', (upright, bearing) => {
    const path = bowedPath(0.47, bearing, upright);
    const figures = branchFigures({ path });
    expect(figures.lengthM).toBeCloseTo(0.47, 9);
    expect(figures.fromUprightDeg).toBeCloseTo(upright, 5);
    const level = Math.hypot(...chord({ path }).filter((_, i) => i !== 1));
    expect(level > 1e-6 ? figures.bearingDeg : bearing).toBeCloseTo(bearing, 5);
    expect(length(chord({ path }))).toBeLessThan(0.469);
  });
});

describe('the editor', () => {
  it('makes no wood that it could not open again, and says why', () => {
    const editor = createEditor(smallTree);
    expect(editor.make((file) => reshape(file, 'east', { lengthM: 12, fromUprightDeg: 170 }))).toBe(false);
    expect(editor.store.getState().notice?.text).toContain('below the soil');
    expect(editor.file()).toBe(smallTree);
  });
});
