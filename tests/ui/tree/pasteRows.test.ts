import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../../src/document/treeFile.ts';
import { writeTreeFile } from '../../../src/document/writeTreeFile.ts';
import { branchFigures } from '../../../src/editor/figures.ts';
import { columns } from '../../../src/ui/sheets/tree/grid/columns.ts';
import { placeAfter } from '../../../src/ui/sheets/tree/grid/gridKeys.ts';
import { cellsOf, pasteRows } from '../../../src/ui/sheets/tree/grid/pasteRows.ts';
import { gridRows } from '../../../src/ui/sheets/tree/grid/rows.ts';
import { smallTree } from '../../editor/smallTree.ts';

const columnAt = (id: string): number => columns.findIndex((column) => column.id === id);

function pasted(
  text: string,
  at = { row: 0, column: 0 },
  file = smallTree,
  units: 'metric' | 'us' = 'metric',
): TreeFile {
  const result = pasteRows(text, at, gridRows(file, false), file, units);
  if (!result.ok) throw new Error(result.reason);
  const edited = result.edit(file);
  if (!edited.ok) throw new Error(edited.reason);
  return edited.file;
}

const reasonOf = (text: string, at = { row: 0, column: 0 }): string => {
  const result = pasteRows(text, at, gridRows(smallTree, false), smallTree, 'metric');
  return result.ok ? '' : result.reason;
};

const named = (file: TreeFile, name: string) => {
  const axis = file.axes.find((one) => one.name === name);
  if (axis === undefined) throw new Error(`no branch is called ${name}`);
  return axis;
};

describe('rows pasted under heads', () => {
  const text = [
    'Name\tKind\tGrows on\tAlong it (cm)\tLength\tSide\tUpright\tBase\tTip\tLeaves\tCondition',
    'North limb\tlimb\tTrunk\t42,5\t1,12 m\tN\t48\t27\t12\t0\tlive',
    'North limb, lateral 1\tlateral\tNorth limb\t61\t18 in\t31°\t62,5\t6\t5\t0\tsick',
    'Tip shoot\tshoot\tNorth limb, lateral 1\t45\t33\tsouth-west\t20\t5\t4\t7\tlive',
  ].join('\r\n');

  it('make a tree as a helper typed it in, with comma, point, cm, m and inches', () => {
    const file = pasted(text);
    expect(file.axes).toHaveLength(smallTree.axes.length + 3);
    const limb = named(file, 'North limb');
    expect(limb).toMatchObject({ kind: 'scaffold', parentId: 'trunk', baseDiameterM: 0.027 });
    expect(limb.atM).toBeCloseTo(0.425, 9);
    const figures = branchFigures(limb);
    expect(figures.lengthM).toBeCloseTo(1.12, 9);
    expect(figures.fromUprightDeg).toBeCloseTo(48, 6);
    expect(Math.min(figures.bearingDeg, 360 - figures.bearingDeg)).toBeCloseTo(0, 6);
    const lateral = named(file, 'North limb, lateral 1');
    expect(lateral).toMatchObject({ parentId: limb.id, condition: 'diseased', tipDiameterM: 0.005 });
    expect(branchFigures(lateral).lengthM).toBeCloseTo(0.4572, 9);
    const shoot = named(file, 'Tip shoot');
    expect(shoot).toMatchObject({ kind: 'shoot', parentId: lateral.id });
    expect(shoot.foliage).toMatchObject({ count: 7, source: 'measured' });
    expect(branchFigures(shoot).bearingDeg).toBeCloseTo(225, 6);
    expect(parseTreeFile(writeTreeFile(file)).ok).toBe(true);
  });

  it('change the branches of those names, and move them', () => {
    const file = pasted('name;grows on;along it;length\nShoot 2;West limb;11;44\nWest limb;;;51');
    expect(file.axes).toHaveLength(smallTree.axes.length);
    expect(named(file, 'Shoot 2')).toMatchObject({ parentId: 'west', atM: 0.11 });
    expect(branchFigures(named(file, 'West limb')).lengthM).toBeCloseTo(0.51, 9);
  });

  it('are refused whole, with the row and the word that cannot be used', () => {
    expect(reasonOf('Name\tGrows on\tLength\nA\tTrunk\t40\nB\tNowhere\t40')).toBe(
      'Row 2 of what was pasted: a new branch needs "Grows on". Nothing was changed.',
    );
    expect(reasonOf('Name\tGrows on\tLength\nA\tTrunk\tlong')).toContain('"long" cannot be used as Length.');
    expect(reasonOf('Name\tGrows on\tAlong it\nA\tTrunk\t400')).toContain('Trunk is only 47 cm long');
    expect(reasonOf(Array<string>(2002).fill('a\tb').join('\n'))).toContain('more than 2000 rows');
  });
});

describe('cells pasted at a place', () => {
  it('fill to the right and downwards; empty ones leave what is there', () => {
    // Rows of the table: trunk, east, its lateral, shoots 1 and 2, west.
    const file = pasted('41\t\t30\n37,5\tE\t', { row: 3, column: columnAt('length') });
    expect(branchFigures(named(file, 'Shoot 1')).lengthM).toBeCloseTo(0.41, 9);
    expect(branchFigures(named(file, 'Shoot 1')).fromUprightDeg).toBeCloseTo(30, 6);
    expect(branchFigures(named(file, 'Shoot 2')).lengthM).toBeCloseTo(0.375, 9);
    expect(branchFigures(named(file, 'Shoot 2')).bearingDeg).toBeCloseTo(90, 6);
  });

  it('are read in inches and feet where those are shown', () => {
    const file = pasted(`1'2"`, { row: 5, column: columnAt('length') }, smallTree, 'us');
    expect(branchFigures(named(file, 'West limb')).lengthM).toBeCloseTo(0.3556, 9);
    const bare = pasted('9', { row: 5, column: columnAt('length') }, smallTree, 'us');
    expect(branchFigures(named(bare, 'West limb')).lengthM).toBeCloseTo(0.2286, 9);
  });

  it('may make a branch thinner at both ends', () => {
    const file = pasted('7\t5', { row: 5, column: columnAt('base') });
    expect(named(file, 'West limb')).toMatchObject({ baseDiameterM: 0.007, tipDiameterM: 0.005 });
  });

  it('change nothing where all is as it was', () => {
    const shown = gridRows(smallTree, false).map((row) =>
      columns.map((column) => column.text(row, smallTree, 'metric')).join('\t'),
    );
    expect(reasonOf(shown.join('\n'))).toBe('There is nothing in it that fits this table.');
  });
});

describe('text of a spreadsheet', () => {
  it('is taken apart at tabs or semicolons, quotes taken off', () => {
    expect(cellsOf('a\t"b, c"\r\n"say ""x"""\td\n')).toEqual([
      ['a', 'b, c'],
      ['say "x"', 'd'],
    ]);
    expect(cellsOf('1,5;2')).toEqual([['1,5', '2']]);
  });
});

describe('keys of the table', () => {
  it('walk within it and jump to its ends', () => {
    const at = { row: 2, column: 3 };
    expect(placeAfter('ArrowUp', false, at, 7, 5)).toEqual({ row: 1, column: 3 });
    expect(placeAfter('ArrowRight', false, { row: 2, column: 4 }, 7, 5)).toEqual({ row: 2, column: 4 });
    expect(placeAfter('PageDown', false, at, 7, 5)).toEqual({ row: 6, column: 3 });
    expect(placeAfter('End', true, at, 7, 5)).toEqual({ row: 6, column: 4 });
    expect(placeAfter('Home', false, at, 7, 5)).toEqual({ row: 2, column: 0 });
    expect(placeAfter('x', false, at, 7, 5)).toBeNull();
  });

  it('list buds as rows of their branch when asked to', () => {
    const withBuds = gridRows(smallTree, true);
    const ids = ['trunk', 'east', 'lateral', 'lateral-b1', 'shoot-1', 'shoot-2', 'west'];
    expect(withBuds.map(({ id }) => id)).toEqual(ids);
    expect(withBuds.map(({ level }) => level)).toEqual([1, 2, 3, 4, 4, 4, 2]);
  });
});
