/** Columns of text, aligned. */

export interface Column {
  readonly title: string;
  readonly align: 'left' | 'right';
}

const letters = new Intl.Segmenter('en', { granularity: 'grapheme' });

const wide =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\u3000-\u303f\uff01-\uff60]/u;

/** Places that a terminal gives to a text: one a letter, whatever it is made of, two for East Asian ones. */
function widthOf(text: string): number {
  let width = 0;
  for (const { segment } of letters.segment(text)) width += wide.test(segment) ? 2 : 1;
  return width;
}

function padded(text: string, width: number, align: Column['align']): string {
  const space = ' '.repeat(Math.max(0, width - widthOf(text)));
  return align === 'left' ? text + space : space + text;
}

/** Lines of a table, its titles first, without trailing blanks. Each row has one cell a column. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string[] {
  const bad = rows.find((row) => row.length !== columns.length);
  if (bad !== undefined) throw new Error(`table: a row needs ${columns.length} cells, got ${bad.length}`);
  const lines = [columns.map(({ title }) => title), ...rows];
  const widths = columns.map((_, i) => Math.max(...lines.map((line) => widthOf(line[i] ?? ''))));
  return lines.map((line) =>
    line
      .map((cell, i) => padded(cell, widths[i] ?? 0, columns[i]?.align ?? 'left'))
      .join('  ')
      .trimEnd(),
  );
}

/** A blank at which a line may end: none between a number and its fraction, unit or per cent sign. */
const breakable = / (?!%)(?!(?<=\d )(?:\d+\/\d+|mm|cm|m|in|ft|sq)(?!\w))(?!(?<=\d ft )\d)/;

/** Text broken at blanks into lines of at most `most` places; the first begins with `first`, the others with `rest`. */
export function wrapped(text: string, most: number, first = '', rest = first): string[] {
  const lines: string[] = [];
  let line = first;
  let begun = false;
  for (const word of text.split(breakable)) {
    const longer = begun ? `${line} ${word}` : line + word;
    if (begun && widthOf(longer) > most) {
      lines.push(line);
      line = rest + word;
    } else line = longer;
    begun = true;
  }
  return [...lines, line];
}
