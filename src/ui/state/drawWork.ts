/** The stroke in hand: shown as the draft while it is drawn, made one step of undo when the hand lets go. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { TreeFile } from '../../document/treeFile.ts';
import { type CourseAsk, courseOf } from '../../editor/drawing/course.ts';
import { baseOf, drawAgain } from '../../editor/drawing/drawAgain.ts';
import { drawBranch } from '../../editor/drawing/drawBranch.ts';
import type { Look, Xy } from '../../editor/drawing/look.ts';
import type { Snap } from '../../editor/drawing/snap.ts';
import { planeThrough, type Start, startOn, type WorkPlane } from '../../editor/drawing/workPlane.ts';
import type { Edited } from '../../editor/edit.ts';
import type { Editor } from '../../editor/editor.ts';
import type { Path } from '../../geometry/path.ts';

export interface ShownStroke {
  readonly plane: WorkPlane;
  /** Null while it is too short to be a branch. */
  readonly course: { readonly path: Path; readonly snap: Snap | null } | null;
  /** Why it cannot be, in plain words; the last that could stays in the picture. */
  readonly refusal: string | null;
  /** Where the hand is, pixels of the picture. */
  readonly at: Xy;
}

export interface DrawState {
  readonly stroke: ShownStroke | null;
  /** The next stroke draws the selected branch over in this view. */
  readonly isAgain: boolean;
  /** Tips settle on wood, upright, level and bearings. */
  readonly snaps: boolean;
}

export interface DrawWork {
  readonly store: StoreApi<DrawState>;
  /**
   * Takes hold of a branch of the open tree; does nothing while another draft is shown.
   * @param snapPx how near the tip must come to settle on something
   */
  begin(id: string, look: Look, at: Xy, snapPx: number): void;
  /** The hand has come to a pixel; shown by the next `show`. */
  to(at: Xy): void;
  /** @param isFree nothing is snapped to while it is so */
  show(isFree: boolean): void;
  /** Makes what was drawn one step of undo. */
  keep(): void;
  /** Leaves no trace. */
  drop(): void;
}

interface InHand {
  readonly from: TreeFile;
  readonly ask: CourseAsk;
  /** Null: the branch is drawn again. */
  readonly start: Start | null;
  readonly stroke: Xy[];
  last: (Edited & { ok: true }) | null;
}

interface Drawn {
  readonly edited: Edited;
  readonly course: NonNullable<ShownStroke['course']>;
}

/** What the stroke makes of the tree; null while it makes nothing. */
function drawn({ from, ask, start, stroke }: InHand, isFree: boolean): Drawn | null {
  const asked = isFree ? { ...ask, snapPx: null } : ask;
  if (start === null) {
    const again = drawAgain(asked, stroke);
    return again === null ? null : { edited: again.edited, course: { path: again.path, snap: null } };
  }
  const course = courseOf(stroke, asked);
  return course === null ? null : { edited: drawBranch(from, start, course.path), course };
}

function takenHold(
  file: TreeFile,
  id: string,
  look: Look,
  at: Xy,
  { isAgain, snaps }: DrawState,
  snapPx: number,
): InHand {
  const start = isAgain ? null : startOn(file, id, look, ...at);
  const plane = start?.plane ?? planeThrough(file, id, baseOf(file, id), look.facing);
  const ask = { file, but: id, plane, look, snapPx: snaps ? snapPx : null };
  return { from: file, ask, start, stroke: [at], last: null };
}

export function createDrawWork(
  editor: Editor,
  view: StoreApi<{ readonly draft: TreeFile | null }>,
): DrawWork {
  const store = createStore<DrawState>(() => ({ stroke: null, isAgain: false, snaps: true }));
  let inHand: InHand | null = null;
  const drop = (): void => {
    if (inHand === null) return;
    inHand = null;
    view.setState({ draft: null });
    store.setState({ stroke: null });
  };
  return {
    store,
    begin(id, look, at, snapPx) {
      if (view.getState().draft !== null) return;
      inHand = takenHold(editor.file(), id, look, at, store.getState(), snapPx);
      store.setState({ stroke: { plane: inHand.ask.plane, course: null, refusal: null, at } });
    },
    to: (at) => {
      inHand?.stroke.push(at);
    },
    show(isFree) {
      if (inHand === null) return;
      const { ask, stroke } = inHand;
      const at = stroke[stroke.length - 1] as Xy;
      const made = drawn(inHand, isFree);
      const refusal = made !== null && !made.edited.ok ? made.edited.reason : null;
      if (refusal === null) inHand.last = made?.edited.ok ? made.edited : null;
      view.setState({ draft: inHand.last?.file ?? null });
      store.setState({ stroke: { plane: ask.plane, course: made?.course ?? null, refusal, at } });
    },
    keep() {
      const done = inHand?.last ?? null;
      // Undone or opened meanwhile: what is in hand is of a tree that is gone. The draft is shown until the same file is open.
      if (done !== null && inHand?.from === editor.file() && editor.make(() => done)) {
        store.setState({ isAgain: false });
      }
      drop();
    },
    drop,
  };
}
