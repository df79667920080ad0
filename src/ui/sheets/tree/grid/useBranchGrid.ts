/** The table of branches as it stands: where the keys are, what is typed, what is ticked, and what each key does. */
import { type RefObject, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Editor } from '../../../../editor/editor.ts';
import { add } from '../../../../editor/edits/add.ts';
import { removeBud } from '../../../../editor/edits/bud.ts';
import { remove } from '../../../../editor/edits/remove.ts';
import { firstGuess } from '../../../../editor/firstGuess.ts';
import { useFile, useSelected, useUnits, useWorkbench } from '../../../state/workbench.ts';
import { columns } from './columns.ts';
import { type GridActs, type GridPlace, gridKeys } from './gridKeys.ts';
import { type GridRow, gridRows } from './rows.ts';
import { useClipboard } from './useClipboard.ts';
import { useTicks } from './useTicks.ts';
import { type EndedBy, useTyping } from './useTyping.ts';

/** What the lines of the table ask of it. */
export interface GridCalls {
  readonly enter: (row: GridRow, column: number) => void;
  readonly begin: (row: GridRow, column: number, first: string | null) => void;
  readonly finish: (row: GridRow, column: number, text: string, by: EndedBy) => void;
  readonly cancel: () => void;
  readonly tick: (row: GridRow) => void;
}

/** The same functions for as long as the table stands, so that lines that show the same are not drawn anew. */
function useSteady(calls: GridCalls): GridCalls {
  const latest = useRef(calls);
  useLayoutEffect(() => {
    latest.current = calls;
  });
  return useMemo(
    () => ({
      enter: (row, column) => latest.current.enter(row, column),
      begin: (row, column, first) => latest.current.begin(row, column, first),
      finish: (row, column, text, by) => latest.current.finish(row, column, text, by),
      cancel: () => latest.current.cancel(),
      tick: (row) => latest.current.tick(row),
    }),
    [],
  );
}

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

/** Opens what else can be done with the branch, and goes to its first field. */
function openMore(tools: Element | null): void {
  if (!(tools instanceof HTMLDetailsElement)) return;
  tools.open = true;
  tools.querySelector<HTMLElement>('input')?.focus();
}

/** @param whole the table with its buttons */
export function useBranchGrid(whole: RefObject<HTMLElement | null>) {
  const { editor } = useWorkbench();
  const file = useFile();
  const units = useUnits();
  const selected = useSelected();
  const [withBuds, setWithBuds] = useState(false);
  const [column, setColumn] = useState(0);
  const rows = useMemo(() => gridRows(file, withBuds), [file, withBuds]);
  const place: GridPlace = {
    row: Math.max(
      0,
      rows.findIndex((row) => row.id === selected),
    ),
    column,
  };
  const current = rows[place.row];
  const { ticked, tick, tickAll } = useTicks(rows);
  const { typing, begin, finish, cancel } = useTyping((by) =>
    setColumn(Math.min(columns.length - 1, Math.max(0, column + by))),
  );
  const acts: GridActs = {
    ...changes(editor, current),
    go: (to, table) => {
      const line = table.querySelectorAll('.grid-body > [role=row]')[to.row];
      line?.querySelectorAll<HTMLElement>('.grid-cell')[to.column]?.focus();
    },
    begin: (first) => current !== undefined && begin(current, column, first),
    tick: () => tick(current),
    tickAll,
    more: () => openMore(whole.current?.querySelector('.branch-tools') ?? null),
  };
  const enter = (row: GridRow, c: number) => {
    setColumn(c);
    if (row.id !== selected) editor.select(row.id);
  };
  const calls = useSteady({ enter, begin, finish, cancel, tick });
  const clipboard = useClipboard(rows, place, ticked);
  // A field that is typed in has keys and clipboard to itself.
  const keys =
    typing === null
      ? {
          onKeyDown: gridKeys(place, rows.length, columns.length, acts),
          onCopy: clipboard.onCopy,
          onPaste: clipboard.onPaste,
        }
      : {};
  const view = { file, units, selected, rows, place, current, typing, ticked, withBuds };
  return { ...view, acts, calls, keys, copy: clipboard.copy, setWithBuds };
}

export type BranchGridState = ReturnType<typeof useBranchGrid>;
