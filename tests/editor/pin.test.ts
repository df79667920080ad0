import { describe, expect, it } from 'vitest';
import { treeFileSchema } from '../../src/document/treeFile.ts';
import type { Edited } from '../../src/editor/edit.ts';
import { createEditor } from '../../src/editor/editor.ts';
import { freeAll, partOf, pinPart, pinsOf, sameButPins } from '../../src/editor/edits/pin.ts';
import { smallTree } from './smallTree.ts';

function made(edited: Edited) {
  if (!edited.ok) throw new Error(`refused: ${edited.reason}`);
  return edited;
}

describe('the grower’s mark on a branch or a bud', () => {
  it('is written where the plan reads it, and nowhere else', () => {
    const { file, said } = made(pinPart(smallTree, 'shoot-2', 'keep'));
    expect(said).toBe('Marked Shoot 2 to stay');
    expect(file.axes.map(({ pin }) => pin)).toEqual([null, null, null, null, null, 'keep']);
    const twice = made(pinPart(file, 'lateral-b1', 'remove'));
    expect(twice.said).toBe('Marked a bud on East limb, lateral to go');
    expect(twice.file.axes[3]?.buds).toEqual([{ id: 'lateral-b1', atM: 0.11, aroundDeg: 31, pin: 'remove' }]);
    expect(treeFileSchema.safeParse(twice.file).success).toBe(true);
    expect(pinsOf(twice.file).map(({ id, pin }) => [id, pin])).toEqual([
      ['lateral-b1', 'remove'],
      ['shoot-2', 'keep'],
    ]);
  });

  it('is taken back, and undone as one step', () => {
    const editor = createEditor(smallTree);
    editor.make((file) => pinPart(file, 'lateral-b1', 'keep'));
    editor.make((file) => pinPart(file, 'lateral-b1', null));
    expect(pinsOf(editor.file())).toEqual([]);
    editor.undo();
    expect(partOf(editor.file(), 'lateral-b1')).toEqual({
      id: 'lateral-b1',
      pin: 'keep',
      isBud: true,
      branch: 'East limb, lateral',
      atM: 0.11,
    });
    editor.undo();
    expect(editor.file()).toBe(smallTree);
  });

  it('is all taken back at once, and changes nothing else of the tree', () => {
    const once = made(pinPart(smallTree, 'shoot-2', 'keep')).file;
    const twice = made(pinPart(once, 'lateral-b1', 'remove')).file;
    expect(sameButPins(twice, smallTree)).toBe(true);
    expect(sameButPins(twice, { ...smallTree, note: 'another' })).toBe(false);
    expect(made(freeAll(twice)).file).toEqual(smallTree);
  });

  it('never fells the tree, and knows what is not on it', () => {
    expect(pinPart(smallTree, 'trunk', 'remove').ok).toBe(false);
    expect(partOf(smallTree, 'no-such-part')).toBeNull();
    expect(() => pinPart(smallTree, 'no-such-part', 'keep')).toThrow('pinPart: no branch or bud');
  });
});
