/** Branches as rows for a spreadsheet, under heads, so that they can be pasted back. */
import type { TreeFile } from '../../../../document/treeFile.ts';
import type { Units } from '../../../../geometry/measure.ts';
import { columns } from './columns.ts';
import { gridRows } from './rows.ts';

/** A cell between tabs: what would end it becomes a blank, quotes are doubled where there are any. */
function cellText(text: string): string {
  const onOneLine = text.replace(/[\t\r\n]+/g, ' ');
  return onOneLine.includes('"') ? `"${onOneLine.replaceAll('"', '""')}"` : onOneLine;
}

/**
 * Text with tabs: a line of heads with their units, then the branches in the order of the table, each after what it grows on.
 * @param ids of branches; others and buds are passed over
 */
export function copyRows(file: TreeFile, ids: ReadonlySet<string>, units: Units): string {
  const heads = columns.map(({ head, quantity }) => {
    const unit = quantity?.unit(units) ?? '';
    return unit === '' ? head : `${head} (${unit})`;
  });
  const lines = gridRows(file, false)
    .filter(({ id }) => ids.has(id))
    .map((row) => columns.map((column) => column.text(row, file, units)));
  return [heads, ...lines].map((cells) => cells.map(cellText).join('\t')).join('\n');
}
