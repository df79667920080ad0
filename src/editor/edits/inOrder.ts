/** Several edits as one step of undo. */
import type { Edit } from '../edit.ts';

/** Made one after the other, each on the file of the one before; when one is refused none is made. */
export function inOrder(edits: readonly Edit[], said: string): Edit {
  return (file) => {
    let next = file;
    let select: string | null | undefined;
    for (const edit of edits) {
      const edited = edit(next);
      if (!edited.ok) return edited;
      next = edited.file;
      select = edited.select ?? select;
    }
    return { ok: true, file: next, said, ...(select === undefined ? {} : { select }) };
  };
}
