/** Branches marked by a stroke over them: shown while the hand sweeps, one step of undo when it lets go. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Editor } from '../../editor/editor.ts';
import { type BrushMark, brushOver } from '../../editor/edits/brush.ts';
import type { Sweep } from '../scene/sweep.ts';

type Xy = readonly [x: number, y: number];

export interface MarkState {
  /** Strokes mark rather than draw. */
  readonly isOn: boolean;
  readonly as: BrushMark;
  /** Branches under the stroke in hand; null: none is in hand. */
  readonly under: ReadonlySet<string> | null;
}

export interface MarkWork {
  readonly store: StoreApi<MarkState>;
  begin(sweep: Sweep, at: Xy): void;
  to(at: Xy): void;
  keep(): void;
  /** Leaves no trace. */
  drop(): void;
}

interface InHand {
  readonly of: TreeFile;
  readonly sweep: Sweep;
  last: Xy;
}

export function createMarkWork(editor: Editor): MarkWork {
  const store = createStore<MarkState>(() => ({ isOn: false, as: 'dead', under: null }));
  let inHand: InHand | null = null;
  const to = (at: Xy): void => {
    if (inHand === null) return;
    const { under } = store.getState();
    const met = inHand.sweep.from(inHand.last, at);
    inHand.last = at;
    if ([...met].some((id) => under?.has(id) !== true))
      store.setState({ under: new Set([...(under ?? []), ...met]) });
  };
  const drop = (): void => {
    inHand = null;
    store.setState({ under: null });
  };
  return {
    store,
    begin(sweep, at) {
      inHand = { of: editor.file(), sweep, last: at };
      store.setState({ under: new Set() });
      to(at);
    },
    to,
    keep() {
      const { under, as } = store.getState();
      // Undone or opened meanwhile: what is in hand is of a tree that is gone.
      if (under !== null && under.size > 0 && inHand?.of === editor.file())
        editor.make((file) => brushOver(file, under, as));
      drop();
    },
    drop,
  };
}
