/** A row or column of twelve months as it is copied from a spreadsheet. */
import { parseDecimal } from '../../geometry/measure.ts';

/** Where one figure ends and the next begins: the strongest mark that is there. A decimal comma is no such mark. */
function cells(line: string): string[] {
  const mark = ['\t', ';', '|'].find((m) => line.includes(m));
  if (mark !== undefined) return line.split(mark).map((cell) => cell.trim());
  if (/,\s/.test(line)) return line.split(/,\s+/).map((cell) => cell.trim());
  if (/\s/.test(line)) return line.split(/\s+/);
  const commas = line.split(',');
  return commas.length > 2 ? commas.map((cell) => cell.trim()) : [line];
}

const isNumber = (text: string): boolean => parseDecimal(text) !== null;

/**
 * The columns of figures in pasted text, each of twelve texts from January on. A label before or above them is left
 * out. Null when there are not twelve months either across or down.
 */
export function pastedMonths(text: string): readonly (readonly string[])[] | null {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const table = lines.map((line) => cells(line.trim()).filter((cell) => cell !== ''));
  const rows = table.filter((row) => row.some(isNumber)).map((row) => row.slice(row.findIndex(isNumber)));
  const [first] = rows;
  if (first === undefined || !rows.every((row) => row.length === first.length && row.every(isNumber)))
    return null;
  if (first.length === 12) return rows;
  if (rows.length === 12) return first.map((_, column) => rows.map((row) => row[column] as string));
  return null;
}
