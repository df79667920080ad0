/** Rows copied from a spreadsheet, as one edit: new branches under heads, or cells filled from a place. */
import type { TreeFile } from '../../../../document/treeFile.ts';
import type { Edit } from '../../../../editor/edit.ts';
import { add } from '../../../../editor/edits/add.ts';
import { inOrder } from '../../../../editor/edits/inOrder.ts';
import { firstGuess } from '../../../../editor/firstGuess.ts';
import type { Units } from '../../../../geometry/measure.ts';
import { quantities } from '../../../fields/quantities.ts';
import { type Column, type ColumnId, columns } from './columns.ts';
import { type GridRow, gridRows } from './rows.ts';
import { gridWords as words } from './words.ts';

export type Pasted =
  | { readonly ok: true; readonly edit: Edit }
  | { readonly ok: false; readonly reason: string };

const mostRows = 2000;

const refused = (reason: string): Pasted => ({ ok: false, reason });

/** Lines of cells: between tabs, or between semicolons where there is no tab. Quotes round a cell are taken off. */
export function cellsOf(text: string): string[][] {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n+$/, '').split('\n');
  const mark = text.includes('\t') ? '\t' : ';';
  return lines.map((line) =>
    line.split(mark).map((cell) =>
      cell
        .trim()
        .replace(/^"(.*)"$/, '$1')
        .replaceAll('""', '"'),
    ),
  );
}

/** @param at the row and column of the cell that has the focus */
export function pasteRows(
  text: string,
  at: { readonly row: number; readonly column: number },
  rows: readonly GridRow[],
  file: TreeFile,
  units: Units,
): Pasted {
  const cells = cellsOf(text);
  if (cells.length > mostRows) return refused(words.tooLong);
  const heads = cells[0]?.map(columnOfHead) ?? [];
  return isHeads(heads)
    ? underHeads(heads, cells.slice(1), file, units)
    : fromPlace(cells, at, rows, file, units);
}

const isHeads = (heads: readonly (Column | null)[]): heads is readonly Column[] =>
  heads.length > 1 && heads.every((head) => head !== null);

/** "Length", "length (cm)". */
function columnOfHead(head: string): Column | null {
  const plain = head
    .replace(/[([].*$/, '')
    .trim()
    .toLowerCase();
  return columns.find((column) => column.head.toLowerCase() === plain || column.id === plain) ?? null;
}

/** Fills the cells to the right and downwards; an empty cell leaves what is there. */
function fromPlace(
  cells: readonly (readonly string[])[],
  at: { readonly row: number; readonly column: number },
  rows: readonly GridRow[],
  file: TreeFile,
  units: Units,
): Pasted {
  const edits: Edit[] = [];
  for (const [i, line] of cells.entries()) {
    const row = rows[at.row + i];
    if (row === undefined) break;
    const under = columns.slice(at.column, at.column + line.length);
    const cell = (id: ColumnId): string => line[under.findIndex((column) => column.id === id)] ?? '';
    for (const column of thinningFirst(under, file, row.id, cell, units)) {
      const edit = cellEdit(column, row, cell(column.id), file, units);
      if (typeof edit === 'string') return refused(words.row(i + 1, edit));
      if (edit !== null) edits.push(edit);
    }
  }
  if (edits.length === 0) return refused(words.nothing);
  return { ok: true, edit: inOrder(edits, words.pasted(cells.length)) };
}

/** Null where nothing changes; a sentence where the text cannot be read. */
export function cellEdit(
  column: Column,
  row: GridRow,
  text: string,
  file: TreeFile,
  units: Units,
): Edit | string | null {
  if (text.trim() === '' || text.trim() === column.text(row, file, units)) return null;
  const edit = column.edit(row, text, file, units);
  if (edit === 'fixed') return null;
  return edit ?? words.unread(text, column.head);
}

/** Each line is a branch: the one of that name is changed, or a new one made. Later lines may grow on earlier ones. */
function underHeads(
  heads: readonly Column[],
  lines: readonly (readonly string[])[],
  file: TreeFile,
  units: Units,
): Pasted {
  let next = file;
  for (const [i, line] of lines.entries()) {
    const made = lineOf(heads, line, next, units);
    if (typeof made === 'string') return refused(words.row(i + 1, made));
    next = made;
  }
  if (next === file) return refused(words.nothing);
  const done = next;
  return { ok: true, edit: () => ({ ok: true, file: done, said: words.pasted(lines.length) }) };
}

/** The file with that line in it, or why not. */
function lineOf(
  heads: readonly Column[],
  line: readonly string[],
  file: TreeFile,
  units: Units,
): TreeFile | string {
  const cell = (id: ColumnId): string => line[heads.findIndex((head) => head.id === id)]?.trim() ?? '';
  let next = file;
  let known = cell('name') === '' ? undefined : file.axes.find((axis) => axis.name === cell('name'));
  if (known === undefined) {
    const parent = file.axes.find((axis) => axis.name.toLowerCase() === cell('on').toLowerCase());
    if (parent === undefined) return words.needs(words.heads.on);
    const made = add(file, { ...firstGuess(file, parent), name: cell('name') });
    if (!made.ok) return made.reason;
    next = made.file;
    known = next.axes.at(-1);
  }
  const id = known?.id;
  for (const column of thinningFirst(heads, next, id, cell, units)) {
    const row = gridRows(next, false).find((one) => one.id === id);
    const text = cell(column.id);
    const edit = row === undefined ? null : cellEdit(column, row, text, next, units);
    if (typeof edit === 'string') return edit;
    const edited = edit?.(next);
    if (edited?.ok === false) return edited.reason;
    next = edited?.file ?? next;
  }
  return next;
}

/** The columns with the tip before the base where the base becomes thinner than the tip is now: neither order suits all. */
function thinningFirst(
  heads: readonly Column[],
  file: TreeFile,
  id: string | undefined,
  cell: (id: ColumnId) => string,
  units: Units,
): readonly Column[] {
  const tipM = file.axes.find((axis) => axis.id === id)?.tipDiameterM;
  const baseM = quantities.thickness.read(cell('base'), units);
  if (tipM === undefined || baseM === null || baseM >= tipM) return heads;
  return heads.toSorted((a, b) => Number(b.id === 'tip') - Number(a.id === 'tip'));
}
