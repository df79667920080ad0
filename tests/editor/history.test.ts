import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { TreeFile } from '../../src/document/treeFile.ts';
import { writeTreeFile } from '../../src/document/writeTreeFile.ts';
import type { Edit, Edited } from '../../src/editor/edit.ts';
import { createEditor } from '../../src/editor/editor.ts';
import { add } from '../../src/editor/edits/add.ts';
import { copyRound, mirror } from '../../src/editor/edits/copy.ts';
import { describe as describeBranch } from '../../src/editor/edits/describe.ts';
import { markMany, removeMany, thinEverySecond } from '../../src/editor/edits/many.ts';
import { move } from '../../src/editor/edits/move.ts';
import { changeStanding } from '../../src/editor/edits/place.ts';
import { remove } from '../../src/editor/edits/remove.ts';
import { reshape } from '../../src/editor/edits/reshape.ts';
import { setAlong } from '../../src/editor/edits/setAlong.ts';
import { split } from '../../src/editor/edits/split.ts';
import { turnRound } from '../../src/editor/edits/turnRound.ts';
import { smallTree } from './smallTree.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });

const along = {
  what: 'shoots' as const,
  count: 2,
  firstM: 0.03,
  spacingM: 0.07,
  aroundDeg: 40,
  divergenceDeg: 137.5,
  shootM: 0.31,
  leafCount: 5,
};

/** Edits of the branch picked by `a`, with figures made of three shares. */
const edits: Readonly<Record<string, (file: TreeFile, a: number, b: number, c: number) => Edited>> = {
  add: (file, a, b, c) =>
    add(file, {
      name: '',
      kind: 'shoot',
      parentId: pick(file, a),
      atM: b * 0.1,
      lengthM: 0.02 + b,
      bearingDeg: c * 360,
      fromUprightDeg: a * 120,
      baseDiameterM: 0.012,
      tipDiameterM: 0.006,
      condition: 'live',
      leafCount: Math.round(c * 9),
      budCount: Math.round(a * 5),
    }),
  move: (file, a, b, c) => move(file, pick(file, a), pick(file, b), c * 0.2),
  remove: (file, a) => remove(file, pick(file, a)),
  reshape: (file, a, b, c) =>
    reshape(file, pick(file, a), { lengthM: 0.05 + b, bearingDeg: c * 360, fromUprightDeg: b * 170 }),
  describe: (file, a, b, c) =>
    describeBranch(file, pick(file, a), {
      name: `Branch ${Math.round(b * 99)}`,
      condition: 'dead',
      budCount: Math.round(c * 6),
    }),
  copy: (file, a, b, c) =>
    copyRound(file, pick(file, a), { count: 2 + Math.round(b * 2), stepM: (c - 0.5) * 0.1 }),
  mirror: (file, a) => mirror(file, pick(file, a)),
  mark: (file, a, b, c) =>
    markMany(file, [pick(file, a), pick(file, b)], { condition: 'damaged', pin: c > 0.5 ? 'keep' : null }),
  removeMany: (file, a, b) => removeMany(file, [pick(file, a), pick(file, b)]),
  thin: (file, a) => thinEverySecond(file, pick(file, a)),
  setBuds: (file, a, b, c) =>
    setAlong(file, pick(file, a), {
      ...along,
      what: 'buds',
      count: 1 + Math.round(b * 5),
      spacingM: c * 0.1,
    }),
  setShoots: (file, a, b, c) =>
    setAlong(file, pick(file, a), { ...along, count: 1 + Math.round(b * 3), firstM: c * 0.1 }),
  split: (file, a, b) => split(file, pick(file, a), b * 0.4),
  turnRound: (file, a, b) => turnRound(file, pick(file, a), b * 360),
  turn: (file, _, b) => changeStanding(file, { turnedDeg: b * 360 }),
};

function pick(file: TreeFile, x: number): string {
  return file.axes[Math.floor(x * file.axes.length * 0.999)]?.id ?? 'trunk';
}

/** Any edit of any branch that is there when its turn comes. */
const anyEdit: fc.Arbitrary<Edit> = fc
  .tuple(fc.constantFrom(...Object.values(edits)), share, share, share)
  .map(
    ([edit, a, b, c]): Edit =>
      (file) =>
        edit(file, a, b, c),
  );

describe('undo', () => {
  it('of 200 random edits gives back the first bytes, and redo the last (seed 20417)', () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { minLength: 200, maxLength: 200 }), (edits) => {
        const editor = createEditor(smallTree);
        const start = writeTreeFile(editor.file());
        for (const edit of edits) editor.make(edit);
        const end = writeTreeFile(editor.file());
        // Whatever was made can be opened again.
        expect(parseTreeFile(end)).toMatchObject({ ok: true });
        const steps = editor.store.getState().history.past.length;
        for (let i = 0; i < steps; i++) editor.undo();
        expect(writeTreeFile(editor.file())).toBe(start);
        expect(editor.store.getState().history.past).toHaveLength(0);
        for (let i = 0; i < steps; i++) editor.redo();
        expect(writeTreeFile(editor.file())).toBe(end);
      }),
      { seed: 20417, numRuns: 12 },
    );
  });

  it('takes one step for one edit and none for a refused one', () => {
    const editor = createEditor(smallTree);
    expect(editor.make((file) => reshape(file, 'east', { lengthM: 0.5 }))).toBe(true);
    expect(editor.make((file) => remove(file, 'trunk'))).toBe(false);
    expect(editor.store.getState().history.past).toHaveLength(1);
    expect(editor.store.getState().notice?.kind).toBe('refused');
    editor.undo();
    expect(editor.file()).toBe(smallTree);
  });

  it('brings back the tree that was open before another was opened', () => {
    const editor = createEditor(smallTree);
    editor.open({ ...smallTree, id: 'other', name: 'Other fig' });
    expect(editor.file().name).toBe('Other fig');
    editor.undo();
    expect(editor.file()).toBe(smallTree);
  });

  it('forgets a selected branch that is no longer there', () => {
    const editor = createEditor(smallTree);
    editor.make((file) =>
      add(file, {
        name: 'Low shoot',
        kind: 'shoot',
        parentId: 'west',
        atM: 0.1,
        lengthM: 0.3,
        bearingDeg: 20,
        fromUprightDeg: 40,
        baseDiameterM: 0.01,
        tipDiameterM: 0.005,
        condition: 'live',
        leafCount: 6,
        budCount: 0,
      }),
    );
    expect(editor.store.getState().selectedId).not.toBeNull();
    editor.undo();
    expect(editor.store.getState().selectedId).toBeNull();
  });
});
