/** The open tree: its history, what is selected, and the last thing said about an edit. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import { parentsFirst } from '../document/meaning/graph.ts';
import { findImpossibleWood } from '../document/meaning/wood.ts';
import { namedPlace } from '../document/shape.ts';
import type { TreeFile } from '../document/treeFile.ts';
import type { Edit } from './edit.ts';
import { type History, record, redo, startHistory, undo } from './history.ts';
import { isThere } from './selection.ts';

export interface Notice {
  readonly kind: 'done' | 'refused';
  readonly text: string;
}

export interface EditorState {
  readonly history: History;
  /** Id of a branch or bud. */
  readonly selectedId: string | null;
  readonly notice: Notice | null;
}

export interface Editor {
  readonly store: StoreApi<EditorState>;
  file(): TreeFile;
  /** Makes an edit one step of undo. A refused edit changes nothing but the notice. Says whether it was made. */
  make(edit: Edit): boolean;
  /** Puts another file in place of the open one, as one step that can be undone. */
  open(file: TreeFile): void;
  undo(): void;
  redo(): void;
  select(id: string | null): void;
  say(notice: Notice | null): void;
}

const done = (text: string): Notice => ({ kind: 'done', text });

/** The state after a move through history: what is no longer there is no longer selected. */
function at(history: History, selectedId: string | null, text: string): EditorState {
  const isKept = selectedId !== null && isThere(history.present.file, selectedId);
  return { history, selectedId: isKept ? selectedId : null, notice: done(text) };
}

/** Why the wood of the next file cannot stand: what is made must be readable when it is opened again. */
function impossibleWood(next: TreeFile, before: TreeFile): string | null {
  if (next.axes === before.axes) return null;
  const wrong = findImpossibleWood(next.axes, parentsFirst(next.axes));
  return wrong === null ? null : `That cannot be: ${namedPlace(next, wrong.place)}. ${wrong.reason}`;
}

function edited(state: EditorState, edit: Edit): EditorState {
  const { history, selectedId } = state;
  const result = edit(history.present.file);
  if (!result.ok) return { ...state, notice: { kind: 'refused', text: result.reason } };
  if (result.file === history.present.file) return state;
  const impossible = impossibleWood(result.file, history.present.file);
  if (impossible !== null) return { ...state, notice: { kind: 'refused', text: impossible } };
  const select = result.select === undefined ? selectedId : result.select;
  return at(record(history, { file: result.file, said: result.said }), select, result.said);
}

function undone(state: EditorState): EditorState {
  const { history, selectedId } = state;
  if (history.past.length === 0) return state;
  return at(undo(history), selectedId, `Undone: ${history.present.said}`);
}

function redone(state: EditorState): EditorState {
  const { history, selectedId } = state;
  const next = history.future[0];
  return next === undefined ? state : at(redo(history), selectedId, `Done again: ${next.said}`);
}

export function createEditor(start: TreeFile): Editor {
  const store = createStore<EditorState>(() => ({
    history: startHistory(start),
    selectedId: null,
    notice: null,
  }));
  const { getState, setState } = store;
  const file = () => getState().history.present.file;
  return {
    store,
    file,
    make(edit) {
      const before = getState();
      const after = edited({ ...before, notice: null }, edit);
      setState(after);
      return after.notice?.kind !== 'refused';
    },
    open(next) {
      const said = `Opened ${next.name}`;
      setState(at(record(getState().history, { file: next, said }), null, said));
    },
    undo: () => setState(undone(getState())),
    redo: () => setState(redone(getState())),
    select: (selectedId) => setState({ selectedId }),
    say: (notice) => setState({ notice }),
  };
}
