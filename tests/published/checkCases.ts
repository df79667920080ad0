/** Runs a table of published cases: every case must have its answer, every answer its case, and both stand in docs/accuracy.md. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectFolder } from '../house/source.ts';
import { rowOf } from './accuracyTable.ts';
import { type CaseTable, compare } from './caseTable.ts';

const written = readFileSync(join(projectFolder, 'docs', 'accuracy.md'), 'utf8').split('\n');

export function checkCases({ cases, answers }: CaseTable): void {
  test('every published case has its answer, and none was dropped', () => {
    expect(Object.keys(answers).sort()).toEqual(cases.map((c) => c.id).sort());
  });
  for (const c of cases) {
    const memory = c.fromMemory ? ', from memory' : '';
    test(`${c.id}: ${c.quantity} (${c.source}${memory})`, () => {
      const compared = compare(c, answers[c.id]?.() ?? Number.NaN);
      compared.forEach(({ ours, published, difference, allowed }, i) => {
        expect(
          Math.abs(difference),
          `value ${i}: got ${ours}, published ${published} ${c.unit}; ${c.toleranceFloor}`,
        ).toBeLessThanOrEqual(allowed);
      });
      expect(written, 'docs/accuracy.md is out of date: npm run accuracy').toContain(rowOf(c, compared));
    });
  }
}
