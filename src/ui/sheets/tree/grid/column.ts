/** What a column of the table of branches is, and the columns of figures. */
import type { TreeFile } from '../../../../document/treeFile.ts';
import type { Edit, TreeAxis } from '../../../../editor/edit.ts';
import type { Units } from '../../../../geometry/measure.ts';
import type { Quantity } from '../../../fields/quantities.ts';
import type { GridRow } from './rows.ts';
import { gridWords as words } from './words.ts';

export interface Choice {
  readonly value: string;
  readonly text: string;
}

export interface Column {
  readonly id: ColumnId;
  readonly head: string;
  readonly quantity: Quantity | null;
  readonly isFigure: boolean;
  /** Empty where the row has no such thing. */
  text(row: GridRow, file: TreeFile, units: Units): string;
  /** What may be chosen; null where anything is typed. */
  choices(row: GridRow, file: TreeFile): readonly Choice[] | null;
  /** The edit that puts the text in, null when it cannot be read, 'fixed' where the row has no such thing. */
  edit(row: GridRow, text: string, file: TreeFile, units: Units): Edit | null | 'fixed';
  /** Whether what is shown is an estimate: the same figure typed over it is then no longer one. */
  isEstimate?(row: GridRow): boolean;
}

export type ColumnId = keyof typeof words.heads;

export const plainText = (text: string): string => text.trim().toLowerCase();

/** The option of that text; its value in the file is understood too. */
export function chosen<T extends string>(
  options: readonly { readonly value: T; readonly text: string }[],
  text: string,
): T | null {
  const wanted = plainText(text);
  return options.find((one) => plainText(one.text) === wanted || one.value === wanted)?.value ?? null;
}

export type Get = (row: GridRow, file: TreeFile) => number | null;

/** A column of figures; `get` gives null where the row has none. */
export function figure(
  id: ColumnId,
  quantity: Quantity,
  get: Get,
  put: (row: GridRow, value: number) => Edit,
  read: (text: string, units: Units) => number | null = (text, units) => quantity.read(text, units),
): Column {
  return {
    id,
    head: words.heads[id],
    quantity,
    isFigure: true,
    text: (row, file, units) => {
      const value = get(row, file);
      return value === null ? '' : quantity.write(value, units);
    },
    choices: () => null,
    edit: (row, text, file, units) => {
      if (get(row, file) === null) return 'fixed';
      const value = read(text, units);
      return value === null ? null : put(row, value);
    },
  };
}

export const ofBranch =
  (get: (axis: TreeAxis) => number): Get =>
  ({ axis, bud }) =>
    bud === null ? get(axis) : null;
