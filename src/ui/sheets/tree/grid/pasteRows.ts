/** Rows copied from a spreadsheet, as one edit: new branches under heads, or cells filled from a place. */
import type { TreeFile } from '../../../../document/treeFile.ts';
import type { Edit } from '../../../../editor/edit.ts';
import { add } from '../../../../editor/edits/add.ts';
import { firstGuess } from '../../../../editor/firstGuess.ts';
import type { Units } from '../../../../geometry/measure.ts';
import { quantities } from '../../../fields/quantities.ts';
import type { Column, ColumnId } from './column.ts';
import { columns } from './columns.ts';
import { type GridRow, rowOf } from './rows.ts';
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
  let next = file;
  for (const [i, line] of cells.entries()) {
    const row = rows[at.row + i];
    if (row === undefined) break;
    const made = withLine(columns.slice(at.column, at.column + line.length), line, row.id, next, units);
    if (typeof made === 'string') return refused(words.row(i + 1, made));
    next = made;
  }
  return pastedFile(next, file, cells.length);
}

function pastedFile(done: TreeFile, before: TreeFile, count: number): Pasted {
  if (done === before) return refused(words.nothing);
  return { ok: true, edit: () => ({ ok: true, file: done, said: words.pasted(count) }) };
}

/** The file with that line in the cells of a row, or why not. */
function withLine(
  heads: readonly Column[],
  line: readonly string[],
  id: string,
  file: TreeFile,
  units: Units,
): TreeFile | string {
  const cell = (of: ColumnId): string => line[heads.findIndex((head) => head.id === of)]?.trim() ?? '';
  let next = file;
  for (const column of inOrderOfEdits(heads, next, id, cell, units)) {
    const row = rowOf(next, id);
    const edit = row === null ? null : cellEdit(column, row, cell(column.id), next, units);
    if (typeof edit === 'string') return edit;
    const edited = edit?.(next);
    if (edited?.ok === false) return edited.reason;
    next = edited?.file ?? next;
  }
  return next;
}

/**
 * Null where nothing changes; a sentence where the text cannot be read.
 * @param isTyped whether a person typed it: an estimate typed again is no longer one
 */
export function cellEdit(
  column: Column,
  row: GridRow,
  text: string,
  file: TreeFile,
  units: Units,
  isTyped = false,
): Edit | string | null {
  const isConfirmed = isTyped && column.isEstimate?.(row) === true;
  if (text.trim() === '' || (text.trim() === column.text(row, file, units) && !isConfirmed)) return null;
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
  return pastedFile(next, file, lines.length);
}

/** The file with that line in it, or why not. */
function lineOf(
  heads: readonly Column[],
  line: readonly string[],
  file: TreeFile,
  units: Units,
): TreeFile | string {
  const cell = (id: ColumnId): string => line[heads.findIndex((head) => head.id === id)]?.trim() ?? '';
  const known = cell('name') === '' ? undefined : file.axes.find((axis) => axis.name === cell('name'));
  if (known !== undefined) return withLine(heads, line, known.id, file, units);
  const parent = file.axes.find((axis) => axis.name.toLowerCase() === cell('on').toLowerCase());
  if (parent === undefined) return words.needs(words.heads.on);
  const made = add(file, { ...firstGuess(file, parent), name: cell('name') });
  if (!made.ok) return made.reason;
  return withLine(heads, line, made.select ?? '', made.file, units);
}

/**
 * The order in which a line is put in: first what it grows on, along which its place is measured; the tip before the base
 * where the base becomes thinner than the tip is now, as neither order suits all; what a figure was, after the figure.
 */
function inOrderOfEdits(
  heads: readonly Column[],
  file: TreeFile,
  id: string,
  cell: (id: ColumnId) => string,
  units: Units,
): readonly Column[] {
  const tipM = file.axes.find((axis) => axis.id === id)?.tipDiameterM;
  const baseM = quantities.thickness.read(cell('base'), units);
  const isThinner = tipM !== undefined && baseM !== null && baseM < tipM;
  const rank = (column: Column): number => {
    if (column.id === 'on') return 0;
    if (column.id === 'tip' && isThinner) return 1;
    return column.id === 'leavesFrom' || column.id === 'midribFrom' ? 3 : 2;
  };
  return heads.toSorted((a, b) => rank(a) - rank(b));
}
