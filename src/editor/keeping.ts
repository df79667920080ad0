/** Keeping the open tree on the device, and bringing it back. */
import type { TreeFile } from '../document/treeFile.ts';
import { writeTreeFile } from '../document/writeTreeFile.ts';
import type { Editor } from './editor.ts';

/** The part of `Storage` that is used; any of its calls may throw. */
export interface Shelf {
  getItem(key: string): string | null;
  setItem(key: string, text: string): void;
}

export type Kept =
  | { readonly state: 'kept'; readonly atMs: number }
  | { readonly state: 'waiting' }
  /** Full, or forbidden by the browser. */
  | { readonly state: 'failed' };

const openTreeKey = 'boughlight.open-tree';

/** Text of the tree kept last, or null. Whoever reads it must check it like any other file. */
export function keptText(shelf: Shelf): string | null {
  try {
    return shelf.getItem(openTreeKey);
  } catch {
    return null;
  }
}

/**
 * Keeps the tree after every change, at most `delayMs` later, so that a row of edits costs one write.
 * @returns `flush` writes at once (call it when the page is hidden); `stop` flushes and ends
 */
export function keepOnDevice(
  editor: Editor,
  shelf: Shelf,
  now: () => number,
  onKept: (kept: Kept) => void,
  delayMs = 400,
): { flush(): void; stop(): void } {
  let timer: ReturnType<typeof setTimeout> | null = null;
  const write = (file: TreeFile) => {
    try {
      shelf.setItem(openTreeKey, writeTreeFile(file));
      onKept({ state: 'kept', atMs: now() });
    } catch {
      onKept({ state: 'failed' });
    }
  };
  const flush = () => {
    if (timer === null) return;
    clearTimeout(timer);
    timer = null;
    write(editor.file());
  };
  const unsubscribe = editor.store.subscribe((state, before) => {
    if (state.history.present === before.history.present) return;
    if (timer === null) onKept({ state: 'waiting' });
    else clearTimeout(timer);
    timer = setTimeout(flush, delayMs);
  });
  return {
    flush,
    stop: () => {
      unsubscribe();
      flush();
    },
  };
}
