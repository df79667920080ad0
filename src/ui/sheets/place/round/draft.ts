/** A change to the place that is shown while it is made, and made when the hand lets go. */
import { useRef, useState } from 'react';
import type { TreeFile } from '../../../../document/treeFile.ts';
import type { Edit } from '../../../../editor/edit.ts';
import { useFile, useWorkbench } from '../../../state/workbench.ts';

export interface Draft {
  /** The file with the change, as far as it can be made; else the file as it is. */
  readonly shown: TreeFile;
  show(edit: Edit): void;
  done(): void;
  drop(): void;
}

export function useDraft(): Draft {
  const { editor } = useWorkbench();
  const file = useFile();
  const [edit, setEdit] = useState<Edit | null>(null);
  // Pointer events may come faster than the page is drawn.
  const latest = useRef<Edit | null>(null);
  const put = (next: Edit | null) => {
    latest.current = next;
    setEdit(() => next);
  };
  const edited = edit?.(file);
  return {
    shown: edited?.ok === true ? edited.file : file,
    show: put,
    done: () => {
      if (latest.current !== null) editor.make(latest.current);
      put(null);
    },
    drop: () => put(null),
  };
}
