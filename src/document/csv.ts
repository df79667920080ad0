/** Rows as comma-separated values, by RFC 4180 (Shafranovich 2005): lines end with CR LF, quotes are doubled. */

export type Cell = string | number | null;

/** A spreadsheet may take text that begins so for a formula; an apostrophe before it is read as text. Numbers are left alone. */
const looksLikeFormula = /^["\s]*[=+\-@\t\r]/;

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const safe = looksLikeFormula.test(cell) ? `'${cell}` : cell;
  return `"${safe.replaceAll('"', '""')}"`;
}

/** Text is always quoted, numbers never are, null is an empty cell. */
export const csvText = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
