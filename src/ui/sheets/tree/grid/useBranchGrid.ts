/** The table of branches as it stands: where the keys are, what is typed, what is ticked, and what each key does. */
import { type ClipboardEvent, useMemo, useState } from 'react';
import type { Editor } from '../../../../editor/editor.ts';
import { add } from '../../../../editor/edits/add.ts';
import { removeBud } from '../../../../editor/edits/bud.ts';
import { remove } from '../../../../editor/edits/remove.ts';
import { firstGuess } from '../../../../editor/firstGuess.ts';
import { useFile, useSelected, useUnits, useWorkbench } from '../../../state/workbench.ts';
import type { Column } from './column.ts';
import { columns } from './columns.ts';
import { type GridActs, type GridPlace, gridKeys } from './gridKeys.ts';
import { cellEdit, pasteRows } from './pasteRows.ts';
import { type GridRow, gridRows } from './rows.ts';

interface Typing {
  readonly row: string;
  readonly column: number;
  readonly begun: string;
  /** The field began with a key that was typed, not with the cell's own text. */
  readonly isTyped: boolean;
}

export type EndedBy = 'Enter' | 'Tab' | 'leave';

/** What buttons and keys do with the branch or bud that is selected. */
function changes(editor: Editor, current: GridRow | undefined) {
  return {
    add: () => {
      if (current !== undefined) editor.make((file) => add(file, firstGuess(file, current.axis)));
    },
    remove: () => {
      if (current === undefined) return;
      editor.make((file) => (current.bud === null ? remove(file, current.id) : removeBud(file, current.id)));
    },
  };
}

/** Branches that are ticked, as far as they are still there. */
function useTicks(rows: readonly GridRow[]) {
  const [ticks, setTicks] = useState<ReadonlySet<string>>(new Set());
  const tick = (row: GridRow | undefined) => {
    if (row?.bud !== null) return;
    setTicks((old) => {
      const next = new Set(old);
      if (!next.delete(row.id)) next.add(row.id);
      return next;
    });
  };
  const ticked = rows.filter(({ id, bud }) => bud === null && ticks.has(id)).map(({ id }) => id);
  return { ticked, tick };
}

/** What is typed into which cell, and what becomes of it. */
function useTyping(place: GridPlace, goTo: (column: number) => void) {
  const { editor } = useWorkbench();
  const file = useFile();
  const units = useUnits();
  const [typing, setTyping] = useState<Typing | null>(null);
  const begin = (row: GridRow, c: number, first: string | null) => {
    const at = columns[c] as Column;
    if (at.edit(row, '', file, units) === 'fixed') return;
    const isChoice = at.choices(row, file) !== null;
    const begun = isChoice || first === null ? at.text(row, file, units) : first;
    setTyping({ row: row.id, column: c, begun, isTyped: !isChoice && first !== null });
  };
  const finish = (row: GridRow, c: number, text: string, by: EndedBy) => {
    const edit = cellEdit(columns[c] as Column, row, text, file, units, typing?.isTyped === true);
    setTyping(null);
    if (typeof edit === 'string') editor.say({ kind: 'refused', text: edit });
    else if (edit !== null) editor.make(edit);
    if (by === 'Tab') goTo(Math.min(columns.length - 1, place.column + 1));
  };
  return { typing, begin, finish, cancel: () => setTyping(null) };
}

export function useBranchGrid() {
  const { editor } = useWorkbench();
  const file = useFile();
  const units = useUnits();
  const selected = useSelected();
  const [withBuds, setWithBuds] = useState(false);
  const [column, setColumn] = useState(0);
  const rows = useMemo(() => gridRows(file, withBuds), [file, withBuds]);
  const at = rows.findIndex((row) => row.id === selected);
  const place: GridPlace = { row: Math.max(0, at), column };
  const current = rows[place.row];
  const { ticked, tick } = useTicks(rows);
  const { typing, begin, finish, cancel } = useTyping(place, setColumn);
  const acts: GridActs = {
    ...changes(editor, current),
    go: (to, table) => {
      const cells = table.querySelectorAll<HTMLElement>(`[data-column="${columns[to.column]?.id ?? ''}"]`);
      cells[to.row]?.focus();
    },
    begin: (first) => current !== undefined && begin(current, column, first),
    tick: () => tick(current),
  };
  const enter = (row: GridRow, c: number) => {
    setColumn(c);
    if (row.id !== selected) editor.select(row.id);
  };
  const onPaste = (event: ClipboardEvent) => {
    if (typing !== null) return;
    event.preventDefault();
    const pasted = pasteRows(event.clipboardData.getData('text/plain'), place, rows, file, units);
    if (pasted.ok) editor.make(pasted.edit);
    else editor.say({ kind: 'refused', text: pasted.reason });
  };
  const onKeyDown = typing === null ? gridKeys(place, rows.length, columns.length, acts) : undefined;
  const view = { file, units, selected, rows, place, current, typing, ticked, withBuds };
  return { ...view, acts, setWithBuds, tick, begin, finish, cancel, enter, onPaste, onKeyDown };
}

export type BranchGridState = ReturnType<typeof useBranchGrid>;
