/** What is typed into which cell of the table, and what becomes of it. */
import { useState } from 'react';
import { useFile, useUnits, useWorkbench } from '../../../state/workbench.ts';
import type { Column } from './column.ts';
import { columns } from './columns.ts';
import { cellEdit } from './pasteRows.ts';
import type { GridRow } from './rows.ts';

export interface Typing {
  readonly row: string;
  readonly column: number;
  readonly begun: string;
  /** The field began with a key that was typed, not with the cell's own text. */
  readonly isTyped: boolean;
}

export type EndedBy = 'Enter' | 'Tab' | 'Shift+Tab' | 'leave';

const stepsBy: Readonly<Record<EndedBy, number>> = { Enter: 0, Tab: 1, 'Shift+Tab': -1, leave: 0 };

/** @param goBy moves the place by so many columns */
export function useTyping(goBy: (columns: number) => void) {
  const { editor } = useWorkbench();
  const file = useFile();
  const units = useUnits();
  const [typing, setTyping] = useState<Typing | null>(null);
  const begin = (row: GridRow, c: number, first: string | null) => {
    const at = columns[c] as Column;
    if (at.edit(row, '', file, units) === 'fixed') return;
    const isTyped = first !== null && at.choices(row, file) === null;
    const begun = isTyped ? first : at.text(row, file, units);
    setTyping({ row: row.id, column: c, begun, isTyped });
  };
  const finish = (row: GridRow, c: number, text: string, by: EndedBy) => {
    const edit = cellEdit(columns[c] as Column, row, text, file, units, typing?.isTyped === true);
    setTyping(null);
    if (typeof edit === 'string') editor.say({ kind: 'refused', text: edit });
    else if (edit !== null) editor.make(edit);
    goBy(stepsBy[by]);
  };
  return { typing, begin, finish, cancel: () => setTyping(null) };
}
