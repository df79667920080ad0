import { describe, expect, it } from 'vitest';
import type { Surrounding } from '../../src/document/treeFile.ts';
import { treeFileSchema } from '../../src/document/treeFile.ts';
import { axisOf, type Edited } from '../../src/editor/edit.ts';
import { add, type NewBranch } from '../../src/editor/edits/add.ts';
import { guessWeather } from '../../src/editor/edits/climate.ts';
import { describe as describeBranch } from '../../src/editor/edits/describe.ts';
import { move } from '../../src/editor/edits/move.ts';
import {
  changeLand,
  changePot,
  changeSite,
  changeStanding,
  changeSurrounding,
  changeTurning,
} from '../../src/editor/edits/place.ts';
import { goingWith, remove } from '../../src/editor/edits/remove.ts';
import { reshape } from '../../src/editor/edits/reshape.ts';
import { branchFigures, chord } from '../../src/editor/figures.ts';
import { smallTree } from './smallTree.ts';

const newBranch: NewBranch = {
  name: '',
  kind: 'lateral',
  parentId: 'east',
  atM: 0.17,
  lengthM: 0.37,
  bearingDeg: 127,
  fromUprightDeg: 53,
  baseDiameterM: 0.013,
  tipDiameterM: 0.007,
  condition: 'live',
  leafCount: 7,
  budCount: 5,
};

function made(edited: Edited) {
  if (!edited.ok) throw new Error(`refused: ${edited.reason}`);
  return edited;
}

describe('a branch added by its figures', () => {
  it('has the figures it was given', () => {
    const { file, select } = made(add(smallTree, newBranch));
    const axis = axisOf(file, select as string);
    const figures = branchFigures(axis);
    expect(figures.lengthM).toBeCloseTo(0.37, 9);
    expect(figures.bearingDeg).toBeCloseTo(127, 9);
    expect(figures.fromUprightDeg).toBeCloseTo(53, 9);
    expect(axis.foliage).toEqual({ count: 7, midribM: 0.19, source: 'estimated' });
    expect(axis.buds).toHaveLength(5);
    expect(treeFileSchema.safeParse(file).success).toBe(true);
  });

  it('is named after its side when no name is given, and never like another', () => {
    const once = made(add(smallTree, newBranch)).file;
    const twice = made(add(once, newBranch)).file;
    expect(twice.axes.slice(-2).map((axis) => axis.name)).toEqual([
      'East limb, south-east lateral',
      'East limb, south-east lateral 2',
    ]);
    expect(new Set(twice.axes.map((axis) => axis.id)).size).toBe(twice.axes.length);
  });

  it('is refused beyond the tip of the branch it grows on, with that length named', () => {
    const edited = add(smallTree, { ...newBranch, atM: 0.9 });
    expect(edited).toEqual({
      ok: false,
      reason: 'East limb is only 58 cm long. Give a smaller distance along it.',
    });
  });

  it.each([
    ['no number', { lengthM: Number.NaN }],
    ['a length of nothing', { lengthM: 0 }],
    ['half a leaf', { leafCount: 2.5 }],
    ['a tip thicker than the base', { tipDiameterM: 0.03 }],
  ])('is refused with %s', (_, wrong) => {
    expect(add(smallTree, { ...newBranch, ...wrong }).ok).toBe(false);
  });
});

describe('a branch reshaped', () => {
  it('gets the length, side and angle asked for', () => {
    const { file } = made(reshape(smallTree, 'east', { lengthM: 0.71, bearingDeg: 213, fromUprightDeg: 67 }));
    const figures = branchFigures(axisOf(file, 'east'));
    expect(figures.lengthM).toBeCloseTo(0.71, 9);
    expect(figures.bearingDeg).toBeCloseTo(213, 9);
    expect(figures.fromUprightDeg).toBeCloseTo(67, 9);
  });

  it('keeps its crooks and takes along what grows on it', () => {
    const { file } = made(
      reshape(smallTree, 'east', { bearingDeg: branchFigures(axisOf(smallTree, 'east')).bearingDeg + 90 }),
    );
    const before = chord(axisOf(smallTree, 'shoot-2'));
    const after = chord(axisOf(file, 'shoot-2'));
    expect(after[1]).toBeCloseTo(before[1], 9);
    expect(after[0]).toBeCloseTo(-before[2], 9);
    expect(after[2]).toBeCloseTo(before[0], 9);
    expect(axisOf(file, 'west')).toBe(axisOf(smallTree, 'west'));
  });

  it('can be laid over from straight up', () => {
    const upright = made(reshape(smallTree, 'west', { fromUprightDeg: 0 })).file;
    expect(branchFigures(axisOf(upright, 'west')).fromUprightDeg).toBeCloseTo(0, 5);
    const leaning = made(reshape(upright, 'west', { fromUprightDeg: 41, bearingDeg: 300 })).file;
    expect(branchFigures(axisOf(leaning, 'west')).bearingDeg).toBeCloseTo(300, 5);
    expect(branchFigures(axisOf(leaning, 'west')).fromUprightDeg).toBeCloseTo(41, 5);
  });

  it('made shorter keeps what grew beyond its new tip at the tip, and says so', () => {
    const { file, said } = made(reshape(smallTree, 'lateral', { lengthM: 0.2 }));
    expect(axisOf(file, 'shoot-2').atM).toBe(0.2);
    expect(axisOf(file, 'shoot-1').atM).toBe(0.13);
    expect(said).toContain('1 branch beyond the new tip moved to the tip');
  });
});

describe('a branch moved', () => {
  it('grows where it was put, and the file keeps parents before what grows on them', () => {
    const { file } = made(move(smallTree, 'east', 'west', 0.23));
    expect(axisOf(file, 'east')).toMatchObject({ parentId: 'west', atM: 0.23 });
    const place = (id: string | null) => file.axes.findIndex((axis) => axis.id === id);
    for (const axis of file.axes) expect(place(axis.parentId)).toBeLessThan(place(axis.id));
    expect(file.axes).toHaveLength(smallTree.axes.length);
  });

  it('is refused onto itself and onto what grows on it', () => {
    expect(move(smallTree, 'east', 'east', 0.1).ok).toBe(false);
    expect(move(smallTree, 'east', 'shoot-1', 0.1).ok).toBe(false);
    expect(move(smallTree, 'trunk', 'east', 0.1).ok).toBe(false);
  });
});

describe('a branch deleted', () => {
  it('takes along what grows on it, and says how many', () => {
    expect(goingWith(smallTree, 'east')).toBe(3);
    const { file, said, select } = made(remove(smallTree, 'east'));
    expect(file.axes.map((axis) => axis.id)).toEqual(['trunk', 'west']);
    expect(said).toBe('Deleted East limb and the 3 branches on it');
    expect(select).toBe('trunk');
  });

  it('is never the trunk', () => {
    expect(remove(smallTree, 'trunk').ok).toBe(false);
  });
});

describe('a branch described anew', () => {
  it('holds leaves that were counted as measured', () => {
    const { file } = made(describeBranch(smallTree, 'shoot-1', { leafCount: 13 }));
    expect(axisOf(file, 'shoot-1').foliage).toEqual({ count: 13, midribM: 0.17, source: 'measured' });
  });

  it('keeps its buds when their number is given as it was', () => {
    const { file } = made(describeBranch(smallTree, 'lateral', { budCount: 1, name: 'Low lateral' }));
    expect(axisOf(file, 'lateral').buds).toEqual(axisOf(smallTree, 'lateral').buds);
  });

  it('is refused without a name', () => {
    expect(describeBranch(smallTree, 'shoot-1', { name: '  ' }).ok).toBe(false);
  });
});

describe('the place', () => {
  it('guesses the weather of a kind of climate at the latitude, and says that it is a guess', () => {
    const { climate } = made(guessWeather(smallTree, 'continental')).file.site;
    expect(climate.source).toBe('guess');
    expect(climate).not.toEqual(smallTree.site.climate);
    expect(climate.meanC[6]).toBeGreaterThan(climate.meanC[0] + 15);
  });

  it('takes a change that fits the tree file and refuses one that does not', () => {
    expect(made(changeSite(smallTree, { latitudeDeg: -41.3 })).file.site.latitudeDeg).toBe(-41.3);
    expect(changeSite(smallTree, { latitudeDeg: 71 })).toEqual({
      ok: false,
      reason: 'That cannot be used: the largest value is 66.',
    });
    expect(changeStanding(smallTree, { turnedDeg: Number.NaN }).ok).toBe(false);
  });

  it('adds, changes and takes away a wall', () => {
    const wall = {
      kind: 'wall',
      name: 'Shed',
      from: [-1, 2],
      to: [3, 2],
      heightM: 2.3,
      thicknessM: 0.3,
      reflectance: 0.4,
    } as const;
    const withWall = made(changeSurrounding(smallTree, 0, { ...wall, from: [-1, 2], to: [3, 2] }));
    expect(withWall.said).toBe('Added Shed');
    const higher = made(
      changeSurrounding(withWall.file, 0, { ...wall, from: [-1, 2], to: [3, 2], heightM: 3.1 }),
    );
    expect(higher.file.site.surroundings).toHaveLength(1);
    expect(made(changeSurrounding(higher.file, 0, null)).file.site.surroundings).toEqual([]);
  });

  it('counts the light of the first wall, and of no wall where the file has it dark', () => {
    const place: Surrounding = {
      kind: 'wall',
      name: 'Shed',
      from: [-1, 2],
      to: [3, 2],
      heightM: 2.3,
      thicknessM: 0.3,
      reflectance: 0.4,
    };
    const first = made(changeSurrounding(smallTree, 0, place)).file;
    expect(first.site.wallsThrowLight).toBe(true);
    const dark = { ...smallTree, site: { ...smallTree.site, wallsThrowLight: false } };
    expect(made(changeSurrounding(dark, 0, place)).file.site.wallsThrowLight).toBe(false);
    const { wallsThrowLight: _unsaid, ...site } = first.site;
    const second = changeSurrounding({ ...first, site }, 1, { ...place, from: [-1, 5], to: [3, 5] });
    expect(made(second).file.site.wallsThrowLight).toBeUndefined();
  });

  it('takes a film, a slope and a skyline, and takes them away without a trace', () => {
    const slope = { slopeDeg: 7.5, fallsToDeg: 213 };
    const sloping = made(changeLand(smallTree, 'slope', slope)).file;
    expect(sloping.site.slope).toEqual(slope);
    expect(made(changeLand(sloping, 'slope', null)).file).toEqual(smallTree);
    expect(Object.keys(made(changeLand(sloping, 'slope', null)).file.site)).not.toContain('slope');
    expect(changeLand(smallTree, 'slope', { slopeDeg: 71, fallsToDeg: 0 }).ok).toBe(false);
  });

  it('turns a pot every so many whole weeks, but no tree in the ground', () => {
    const pot = { topDiameterM: 0.47, baseDiameterM: 0.33, heightM: 0.41, soilBelowRimM: 0.05 };
    const potted = made(changePot(smallTree, pot)).file;
    const turning = made(changeTurning(potted, 3)).file;
    expect(turning.standing.quarterTurnEveryWeeks).toBe(3);
    expect(changeTurning(potted, 2.5).ok).toBe(false);
    expect(made(changeTurning(turning, null)).file).toEqual(potted);
    expect(made(changePot(turning, null)).file.standing.quarterTurnEveryWeeks).toBeUndefined();
  });

  it('is refused when a wall would end where it begins', () => {
    const wall = { kind: 'wall', name: 'Stub', heightM: 1, thicknessM: 0.1, reflectance: 0.3 } as const;
    const edited = changeSurrounding(smallTree, 0, { ...wall, from: [1.2, 3], to: [1.2, 3] });
    expect(edited).toMatchObject({ ok: false });
  });
});
