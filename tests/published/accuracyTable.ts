/** The table of docs/accuracy.md: what we get, what is published, and what keeps the two apart. */
import { type CaseTable, type Compared, compare, type PublishedCase } from './caseTable.ts';

/** Down to a tenth of the tolerance, without needless digits. */
function figure(value: number, allowed: number): string {
  const decimals = allowed > 0 ? Math.max(0, Math.min(12, 1 - Math.floor(Math.log10(allowed)))) : 6;
  return String(Number(value.toFixed(decimals)));
}

/** A difference is told to the precision of its tolerance: below a thousandth of it only rounding is left. */
function differenceOf({ difference, allowed }: Compared): string {
  if (Math.abs(difference) <= Math.max(1e-3 * allowed, 1e-9)) return '0';
  return `${difference > 0 ? '+' : ''}${Number(difference.toPrecision(2))}`;
}

/** How much of its tolerance a value uses. */
const used = ({ difference, allowed }: Compared): number =>
  allowed === 0 ? (difference === 0 ? 0 : Number.POSITIVE_INFINITY) : Math.abs(difference) / allowed;

const cell = (text: string): string => text.replaceAll('|', '\\|');

/** A row of the table: the value of the case that uses most of its tolerance. */
export function rowOf(c: PublishedCase, compared: readonly Compared[]): string {
  const worst = compared.reduce((a, b) => (used(b) > used(a) ? b : a));
  const tolerance =
    worst.allowed === 0 ? 'exact' : `${Number(worst.allowed.toPrecision(2))}: ${c.toleranceFloor}`;
  // Of values in several units the quantity says which is which.
  const unit = c.unit === '-' || c.unit === 'mixed' || c.unit.includes(',') ? '' : ` ${c.unit}`;
  const cells = [
    c.quantity,
    compared.length === 1 ? '1' : `worst of ${compared.length}`,
    `${figure(worst.ours, worst.allowed)}${unit}`,
    figure(worst.published, worst.allowed),
    differenceOf(worst),
    tolerance,
    `${c.source}${c.fromMemory ? ', from memory' : ''}`,
  ];
  return `| ${cells.map(cell).join(' | ')} |`;
}

/** A case that no value of ours is compared with: a band or bound, held by a test of its own. */
export const bandRow = (c: PublishedCase): string => `| ${cell(c.quantity)} | ${cell(c.source)} |`;

export interface AccuracyPart extends CaseTable {
  readonly title: string;
  readonly bands: readonly PublishedCase[];
}

const head = `# How accurate it is

What our code gives beside what is published. Every row is a test in \`tests/published\`; this page is made by \`npm run accuracy\`
from the same cases and the same code, and the tests fail when it is out of date. Of a case with many values (a table, a
curve) the value stands here that uses most of its tolerance. Beside each tolerance stands what keeps it from being
smaller. "From memory" marks figures that were quoted without the print at hand.
`;

/** Text of the page. Takes as long as the tests do. */
export function accuracyText(parts: readonly AccuracyPart[]): string {
  const sections = parts.map(({ title, cases, answers, bands }) => {
    const rows = cases.map((c) => rowOf(c, compare(c, answers[c.id]?.() ?? Number.NaN)));
    const table = [
      '| quantity | values | ours | published | difference | tolerance | source |',
      '|---|---|---|---|---|---|---|',
      ...rows,
    ];
    const beside =
      bands.length === 0
        ? []
        : [
            '',
            'Bands and bounds, each held by a test of its own:',
            '',
            '| quantity | source |',
            '|---|---|',
            ...bands.map(bandRow),
          ];
    return [`## ${title}`, '', ...table, ...beside, ''].join('\n');
  });
  return [head, ...sections].join('\n');
}
