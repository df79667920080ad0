import { describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { createEditor } from '../../../src/editor/editor.ts';
import { branchFigures } from '../../../src/editor/figures.ts';
import { createPullWork, type PullView } from '../../../src/ui/state/pullWork.ts';
import { smallTree } from '../../editor/smallTree.ts';

function set() {
  const editor = createEditor(smallTree);
  const view = createStore<PullView>(() => ({ draft: null, held: null }));
  return { editor, view, pulls: createPullWork(editor, view) };
}

const lateral = (file: typeof smallTree) => {
  const axis = file.axes.find(({ id }) => id === 'lateral');
  if (axis === undefined) throw new Error('no lateral');
  return axis;
};

describe('a pull', () => {
  it('is shown while it lasts and is one step of undo, however often the hand moved', () => {
    const { editor, view, pulls } = set();
    pulls.begin('lateral');
    for (const times of [1.1, 1.2, 1.07]) pulls.to({ by: 'thickness', times });
    expect(lateral(view.getState().draft as typeof smallTree).baseDiameterM).toBeCloseTo(0.021 * 1.07, 12);
    expect(editor.file()).toBe(smallTree);
    pulls.keep();
    expect(view.getState().draft).toBeNull();
    expect(lateral(editor.file()).baseDiameterM).toBeCloseTo(0.021 * 1.07, 12);
    expect(editor.store.getState().history.past).toHaveLength(1);
    editor.undo();
    expect(editor.file()).toBe(smallTree);
  });

  it('that is dropped leaves no trace', () => {
    const { editor, view, pulls } = set();
    const before = editor.store.getState();
    pulls.begin('lateral');
    pulls.to({ by: 'thickness', times: 1.3 });
    pulls.drop();
    expect(view.getState().draft).toBeNull();
    expect(editor.store.getState()).toBe(before);
  });

  it('to what cannot be shows the last that could', () => {
    const { view, pulls } = set();
    pulls.begin('lateral');
    pulls.to({ by: 'thickness', times: 1.05 });
    const could = view.getState().draft;
    pulls.to({ by: 'thickness', times: 40 });
    expect(view.getState().draft).toBe(could);
  });

  it('holds what is locked on this branch, and not what was locked on another', () => {
    const { view, pulls, editor } = set();
    view.setState({ held: { id: 'east', names: new Set(['thickness'] as const) } });
    pulls.begin('east');
    pulls.to({ by: 'thickness', times: 1.05 });
    expect(view.getState().draft).toBeNull();
    pulls.keep();
    expect(editor.file()).toBe(smallTree);
    pulls.begin('lateral');
    pulls.to({ by: 'slide', alongM: -0.05 });
    pulls.keep();
    expect(lateral(editor.file()).atM).toBeCloseTo(0.24, 12);
    expect(branchFigures(lateral(editor.file()))).toEqual(branchFigures(lateral(smallTree)));
  });

  it('of a tree that was undone meanwhile is not made', () => {
    const { editor, pulls } = set();
    pulls.begin('lateral');
    pulls.to({ by: 'slide', alongM: -0.05 });
    editor.make((file) => ({ ok: true, file: { ...file, note: 'other' }, said: 'Noted' }));
    pulls.keep();
    expect(lateral(editor.file()).atM).toBe(0.29);
  });

  it('does not begin over the draft of another', () => {
    const { view, pulls } = set();
    const other = { ...smallTree, note: 'a form' };
    view.setState({ draft: other });
    pulls.begin('lateral');
    pulls.to({ by: 'slide', alongM: -0.05 });
    pulls.drop();
    expect(view.getState().draft).toBe(other);
  });
});
