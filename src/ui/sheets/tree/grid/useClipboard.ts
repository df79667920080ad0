/** Rows taken out of the table and put into it. */
import type { ClipboardEvent } from 'react';
import { useFile, useUnits, useWorkbench } from '../../../state/workbench.ts';
import { columns } from './columns.ts';
import { copyRows } from './copyRows.ts';
import type { GridPlace } from './gridKeys.ts';
import { pasteRows } from './pasteRows.ts';
import type { GridRow } from './rows.ts';
import { gridWords as words } from './words.ts';

export function useClipboard(rows: readonly GridRow[], place: GridPlace, ticked: readonly string[]) {
  const { editor } = useWorkbench();
  const file = useFile();
  const units = useUnits();
  const rowsAsText = (ids: readonly string[]) => copyRows(file, new Set(ids), units);
  return {
    /** The ticked rows under their heads; where none is ticked, the cell alone. */
    onCopy(event: ClipboardEvent) {
      const row = rows[place.row];
      event.preventDefault();
      const cell = row === undefined ? '' : (columns[place.column]?.text(row, file, units) ?? '');
      event.clipboardData.setData('text/plain', ticked.length > 0 ? rowsAsText(ticked) : cell);
      editor.say({ kind: 'done', text: words.copied(ticked.length) });
    },
    onPaste(event: ClipboardEvent) {
      event.preventDefault();
      const pasted = pasteRows(event.clipboardData.getData('text/plain'), place, rows, file, units);
      if (pasted.ok) editor.make(pasted.edit);
      else editor.say({ kind: 'refused', text: pasted.reason });
    },
    /** The ticked rows, or all. */
    async copy() {
      const ids = ticked.length > 0 ? ticked : file.axes.map(({ id }) => id);
      try {
        await navigator.clipboard.writeText(rowsAsText(ids));
        editor.say({ kind: 'done', text: words.copied(ids.length) });
      } catch {
        editor.say({ kind: 'refused', text: words.notCopied });
      }
    },
  };
}
