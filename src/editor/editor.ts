/** The open tree: its history, what is selected, and the last thing said about an edit. */
import { createStore, type StoreApi } from 'zustand/vanilla';
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

const stillThere = (file: TreeFile, id: string | null): string | null =>
  id !== null && isThere(file, id) ? id : null;

export function createEditor(start: TreeFile): Editor {
  const store = createStore<EditorState>(() => ({
    history: startHistory(start),
    selectedId: null,
    notice: null,
  }));
  const { getState, setState } = store;
  const file = () => getState().history.present.file;

  const go = (history: History, notice: Notice | null, selectedId: string | null) =>
    setState({ history, notice, selectedId: stillThere(history.present.file, selectedId) });

  return {
    store,
    file,
    make(edit) {
      const { history, selectedId } = getState();
      const edited = edit(history.present.file);
      if (!edited.ok) {
        setState({ notice: { kind: 'refused', text: edited.reason } });
        return false;
      }
      if (edited.file === history.present.file) return true;
      const select = edited.select === undefined ? selectedId : edited.select;
      go(record(history, { file: edited.file, said: edited.said }), done(edited.said), select);
      return true;
    },
    open(next) {
      const said = `Opened ${next.name}`;
      go(record(getState().history, { file: next, said }), done(said), null);
    },
    undo() {
      const { history, selectedId } = getState();
      if (history.past.length > 0) go(undo(history), done(`Undone: ${history.present.said}`), selectedId);
    },
    redo() {
      const { history, selectedId } = getState();
      const next = history.future[0];
      if (next !== undefined) go(redo(history), done(`Done again: ${next.said}`), selectedId);
    },
    select: (id) => setState({ selectedId: stillThere(file(), id) ?? id }),
    say: (notice) => setState({ notice }),
  };
}
