/** What a tree file holds, in a sentence, what stands around it, and its notes. */
import type { CheckReport } from './checkReport.ts';

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export function checkText({ name, counts, around, notes }: CheckReport): string {
  const what = [
    counted(counts.axes, 'branch', 'branches'),
    counted(counts.buds, 'bud', 'buds'),
    counted(counts.shootsInLeaf, 'shoot in leaf', 'shoots in leaf'),
    counted(counts.leaves, 'leaf', 'leaves'),
  ];
  const lines = [
    `This is a good tree file: ${name}, ${what.join(', ')}.`,
    ...around,
    ...notes.map((note) => `Note: ${note}`),
  ];
  return `${lines.join('\n')}\n`;
}
