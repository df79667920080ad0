import { describe, expect, it } from 'vitest';
import { createEditor } from '../../../src/editor/editor.ts';
import type { Sweep } from '../../../src/ui/scene/sweep.ts';
import { createMarkWork } from '../../../src/ui/state/markWork.ts';
import { smallTree } from '../../editor/smallTree.ts';

/** Branches stand at whole tens of x. */
const branches = ['trunk', 'east', 'shoot-1', 'shoot-2'];
const sweep: Sweep = {
  from: ([a], [b]) =>
    new Set(branches.filter((_, i) => 10 * i >= Math.min(a, b) && 10 * i <= Math.max(a, b))),
};

function set() {
  const editor = createEditor(smallTree);
  return { editor, marks: createMarkWork(editor) };
}
const steps = (editor: ReturnType<typeof set>['editor']): number =>
  editor.store.getState().history.past.length;
const dead = (editor: ReturnType<typeof set>['editor']): string[] =>
  editor.file().axes.flatMap(({ id, condition }) => (condition === 'dead' ? [id] : []));

describe('a stroke that marks', () => {
  it('gathers what it goes over and is one step of undo', () => {
    const { editor, marks } = set();
    marks.begin(sweep, [9, 0]);
    for (const x of [14, 22, 18, 31]) marks.to([x, 0]);
    expect([...(marks.store.getState().under ?? [])].sort()).toEqual(['east', 'shoot-1', 'shoot-2']);
    expect(editor.file()).toBe(smallTree);
    marks.keep();
    expect(marks.store.getState().under).toBeNull();
    expect(dead(editor).sort()).toEqual(['east', 'shoot-1', 'shoot-2']);
    expect(steps(editor)).toBe(1);
    editor.undo();
    expect(editor.file()).toBe(smallTree);
  });

  it('that is dropped, or goes over nothing, leaves no trace', () => {
    const { editor, marks } = set();
    marks.begin(sweep, [9, 0]);
    marks.to([25, 0]);
    marks.drop();
    marks.keep();
    marks.begin(sweep, [41, 0]);
    marks.keep();
    expect(marks.store.getState().under).toBeNull();
    expect([editor.file(), steps(editor)]).toEqual([smallTree, 0]);
  });

  it('marks the others where it began on the trunk, which cannot go, and says so when nothing is left', () => {
    const { editor, marks } = set();
    marks.store.setState({ as: 'remove' });
    marks.begin(sweep, [0, 0]);
    marks.to([12, 0]);
    marks.keep();
    expect(editor.file().axes.flatMap(({ id, pin }) => (pin === 'remove' ? [id] : []))).toEqual(['east']);
    marks.begin(sweep, [0, 0]);
    marks.keep();
    expect(steps(editor)).toBe(1);
    expect(editor.store.getState().notice).toMatchObject({ kind: 'refused' });
  });

  it('marks nothing on a tree that was opened meanwhile', () => {
    const { editor, marks } = set();
    marks.begin(sweep, [0, 0]);
    marks.to([22, 0]);
    editor.make((file) => ({ ok: true, file: { ...file, name: 'Another' }, said: 'Opened' }));
    marks.keep();
    expect(dead(editor)).toEqual([]);
  });
});
