/** Runs a table of published cases: every case must have its answer, and every answer its case. */
import { expect, test } from 'vitest';

export interface PublishedCase {
  readonly id: string;
  readonly quantity: string;
  readonly expected: unknown;
  readonly unit: string;
  /** One for all values, one for each, or null where the values must be met exactly. */
  readonly tolerance: number | readonly number[] | null;
  readonly relative: boolean;
  readonly strength: string;
  readonly source: string;
  /** Whether the printed figure was quoted from memory. */
  readonly fromMemory: boolean;
  /** What keeps the tolerance from being smaller. */
  readonly toleranceFloor: string;
}

/** The values of a case as our code gives them, in the order of `expected`. */
export type Answers = Readonly<Record<string, () => number | readonly number[]>>;

const flat = (value: unknown): number[] => (Array.isArray(value) ? value.flatMap(flat) : [Number(value)]);

export function checkCases(cases: readonly PublishedCase[], answers: Answers): void {
  test('every published case has its answer, and none was dropped', () => {
    expect(Object.keys(answers).sort()).toEqual(cases.map((c) => c.id).sort());
  });
  for (const c of cases) {
    const memory = c.fromMemory ? ', from memory' : '';
    test(`${c.id}: ${c.quantity} (${c.source}${memory})`, () => {
      const expected = flat(c.expected);
      const got = flat(answers[c.id]?.());
      expect(got).toHaveLength(expected.length);
      expected.forEach((value, i) => {
        const tolerance = flat(c.tolerance ?? 0)[Array.isArray(c.tolerance) ? i : 0] ?? 0;
        const allowed = c.relative ? tolerance * Math.abs(value) : tolerance;
        expect(
          Math.abs((got[i] as number) - value),
          `value ${i}: got ${got[i]}, published ${value} ${c.unit}; ${c.toleranceFloor}`,
        ).toBeLessThanOrEqual(allowed);
      });
    });
  }
}
