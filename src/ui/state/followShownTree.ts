/** The light is of the tree that is drawn: of the draft while one is pulled, else of the open tree. */
import type { StoreApi } from 'zustand/vanilla';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Editor } from '../../editor/editor.ts';
import type { LightWork } from './lightWork.ts';

/** Edits come in rows, from a hand that pulls or digits that are typed: the light follows them, not each of them. */
const traceDelayMs = 40;

/** Begins with the light of the first tree. */
export function followShownTree(
  editor: Editor,
  view: StoreApi<{ readonly draft: TreeFile | null }>,
  light: LightWork,
): void {
  const shown = (): TreeFile => view.getState().draft ?? editor.file();
  let lit = shown();
  light.trace(lit);
  const follow = (): void => {
    const next = shown();
    if (next === lit) return;
    lit = next;
    light.trace(next, traceDelayMs);
  };
  editor.store.subscribe(follow);
  view.subscribe(follow);
}
