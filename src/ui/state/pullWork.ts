/** The branch in hand: shown as the draft while it is pulled, made one step of undo when the hand lets go. */
import type { StoreApi } from 'zustand/vanilla';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Edited } from '../../editor/edit.ts';
import type { Editor } from '../../editor/editor.ts';
import type { Held } from '../../editor/pull/held.ts';
import { type Pull, pull } from '../../editor/pull/pull.ts';

export interface PullView {
  /** The tree that is shown in place of the open one and is not taken yet; null: the open one is shown. */
  readonly draft: TreeFile | null;
  /** Figures that are locked, and of which branch. */
  readonly held: { readonly id: string; readonly names: Held } | null;
}

export interface PullWork {
  /** Takes hold of a branch of the open tree; does nothing while another draft is shown. */
  begin(id: string): void;
  /** The branch as it is now, told from where it was taken hold of. What cannot be is not shown: the last that could stays. */
  to(how: Pull): void;
  /** Makes what is shown one step of undo. */
  keep(): void;
  /** Leaves no trace. */
  drop(): void;
  isUnderWay(): boolean;
}

const nothing: Held = new Set();

/** The locked figures of a branch. */
export const heldOf = (held: PullView['held'], id: string): Held => (held?.id === id ? held.names : nothing);

interface InHand {
  readonly id: string;
  readonly from: TreeFile;
  last: (Edited & { ok: true }) | null;
}

export function createPullWork(editor: Editor, view: StoreApi<PullView>): PullWork {
  let inHand: InHand | null = null;
  const drop = (): void => {
    if (inHand !== null) view.setState({ draft: null });
    inHand = null;
  };
  return {
    begin(id) {
      if (view.getState().draft !== null) return;
      inHand = { id, from: editor.file(), last: null };
    },
    to(how) {
      if (inHand === null) return;
      const edited = pull(inHand.from, inHand.id, how, heldOf(view.getState().held, inHand.id));
      if (!edited.ok) return;
      inHand.last = edited;
      view.setState({ draft: edited.file });
    },
    keep() {
      const done = inHand?.last ?? null;
      // Undone or opened meanwhile: what is in hand is of a tree that is gone. The draft is shown until the same file is open.
      if (done !== null && inHand?.from === editor.file()) editor.make(() => done);
      drop();
    },
    drop,
    isUnderWay: () => inHand !== null,
  };
}
