import { describe, expect, it } from 'vitest';
import type { TreeFile } from '../../../src/document/treeFile.ts';
import { describe as describeBranch } from '../../../src/editor/edits/describe.ts';
import { sayLeavesFrom } from '../../../src/editor/edits/leaves.ts';
import { branchFigures } from '../../../src/editor/figures.ts';
import type { Units } from '../../../src/geometry/measure.ts';
import { turnDeg } from '../../../src/geometry/world.ts';
import { copyRows } from '../../../src/ui/sheets/tree/grid/copyRows.ts';
import { cellsOf, pasteRows } from '../../../src/ui/sheets/tree/grid/pasteRows.ts';
import { gridRows } from '../../../src/ui/sheets/tree/grid/rows.ts';
import { smallTree } from '../../editor/smallTree.ts';

const start = { row: 0, column: 0 };
const paste = (text: string, file: TreeFile, units: Units) =>
  pasteRows(text, start, gridRows(file, false), file, units);

function pasted(text: string, file: TreeFile, units: Units): TreeFile {
  const result = paste(text, file, units);
  const edited = result.ok ? result.edit(file) : result;
  if (!edited.ok) throw new Error(edited.reason);
  return edited.file;
}

const all = (file: TreeFile) => new Set(file.axes.map(({ id }) => id));

/** The tree whose first shoot's leaves are an estimate, with a limb of a name that a table stumbles over. */
const tree = ((): TreeFile => {
  const named = describeBranch(smallTree, 'west', { name: 'West "long"; limb' });
  const edited = named.ok ? sayLeavesFrom(named.file, 'shoot-1', 'count', 'estimated') : named;
  if (!edited.ok) throw new Error(edited.reason);
  return edited.file;
})();
const bare: TreeFile = { ...tree, axes: tree.axes.slice(0, 1) };

/** As a spreadsheet set to a decimal comma hands rows on. */
const withCommas = (text: string) => text.replace(/(\d)\.(\d)/g, '$1,$2');

describe('rows copied out of the table', () => {
  it.each(['metric', 'us'] as const)('change nothing when they are pasted back, in %s units', (units) => {
    const text = copyRows(tree, all(tree), units);
    expect(text.split('\n')).toHaveLength(tree.axes.length + 1);
    expect(paste(text, tree, units)).toMatchObject({ ok: false, reason: /nothing in it/ });
  });

  it.each([
    ['metric', 'point', (text: string) => text],
    ['metric', 'comma', withCommas],
    ['us', 'point', (text: string) => text],
  ] as const)('make the tree anew on a bare trunk, in %s units with decimal %s', (units, _, written) => {
    const again = pasted(written(copyRows(tree, all(tree), units)), bare, units);
    expect(again.axes).toHaveLength(tree.axes.length);
    for (const axis of tree.axes) {
      const twin = again.axes.find(({ name }) => name === axis.name);
      if (twin === undefined) throw new Error(`${axis.name} is not there`);
      const [is, was] = [branchFigures(twin), branchFigures(axis)];
      // A tenth of a centimetre, a hundredth of an inch, a degree: as they are shown.
      expect(Math.abs(is.lengthM - was.lengthM)).toBeLessThan(0.0006);
      expect(Math.abs(turnDeg(is.bearingDeg, was.bearingDeg))).toBeLessThan(0.51);
      expect(Math.abs(is.fromUprightDeg - was.fromUprightDeg)).toBeLessThan(0.51);
      expect(Math.abs(twin.atM - axis.atM)).toBeLessThan(0.0006);
      expect(Math.abs(twin.baseDiameterM - axis.baseDiameterM)).toBeLessThan(0.00013);
      expect(twin).toMatchObject({ kind: axis.kind, condition: axis.condition, pin: axis.pin });
      expect(twin.foliage?.count).toBe(axis.foliage?.count);
      expect(twin.foliage?.source).toBe(axis.foliage?.source);
      expect(twin.buds).toHaveLength(axis.buds.length);
    }
  });

  it('are those asked for, each after what it grows on, with the units in their heads', () => {
    const cells = cellsOf(copyRows(tree, new Set(['shoot-2', 'west', 'lateral-b1']), 'us'));
    expect(cells.map(([name]) => name)).toEqual(['Name', 'Shoot 2', 'West "long"; limb']);
    expect(cells[0]?.slice(1, 4)).toEqual(['Along it (in)', 'Round it (°)', 'Length (in)']);
  });
});
