/** Published cases and what our code answers to them: read by the tests and by the table of accuracy. */

export interface PublishedCase {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: object;
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

export interface CaseTable {
  readonly cases: readonly PublishedCase[];
  readonly answers: Answers;
}

/** One value of a case beside its published one. */
export interface Compared {
  readonly ours: number;
  readonly published: number;
  /** Of ours from the published one, above 0 when ours is more. */
  readonly difference: number;
  /** Largest difference that passes, either way. */
  readonly allowed: number;
}

const flat = (value: unknown): number[] => (Array.isArray(value) ? value.flatMap(flat) : [Number(value)]);

/** Throws when our code gives more or fewer values than were published. */
export function compare(c: PublishedCase, answer: number | readonly number[]): Compared[] {
  const [expected, got] = [flat(c.expected), flat(answer)];
  if (got.length !== expected.length) {
    throw new Error(`compare: ${c.id} has ${expected.length} published values, got ${got.length}`);
  }
  return expected.map((published, i) => {
    const ours = got[i] as number;
    const tolerance = flat(c.tolerance ?? 0)[Array.isArray(c.tolerance) ? i : 0] ?? 0;
    const allowed = c.relative ? tolerance * Math.abs(published) : tolerance;
    return { ours, published, difference: ours - published, allowed };
  });
}
