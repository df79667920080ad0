import { describe, expect, it } from 'vitest';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import type { Trial } from '../../src/engine/engine.ts';
import { createInPlaceEngine } from '../../src/engine/inPlaceEngine.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { exampleText } from '../cli/stand.ts';

const read = parseTreeFile(exampleText('potted-fig-bud-break'));
if (!read.ok) throw new Error(read.reason);
const { file } = read;

const targets = ({ cuts, yourCall }: Plan): string[] => [...cuts, ...yourCall].map(({ id }) => id).sort();

describe('the first list', { timeout: 120_000 }, () => {
  it('has the cuts of the last one, comes before any world is tried, and its cuts can be tried at once', async () => {
    const engine = createInPlaceEngine();
    const options = { worlds: 3, waves: 2, seed: 7 };
    const told: string[] = [];
    const firsts: { plan: Plan; trial: Promise<Trial> }[] = [];
    const last = await engine.plan(file, { ...options, firstList: true }, ({ doing, partial }) => {
      told.push(doing);
      if (partial === undefined) return;
      const ids = partial.cuts.map(({ id }) => id);
      firsts.push({ plan: partial, trial: engine.tryCuts(ids).result });
      expect(told.some((words) => words.includes('1 of 3'))).toBe(false);
    }).result;
    expect(firsts).toHaveLength(1);
    const [first] = firsts;
    expect(first?.plan.confidence).toBeNull();
    expect(first?.plan.cuts.every(({ pass }) => pass === null)).toBe(true);
    expect(targets(first?.plan as Plan)).toEqual(targets(last));
    expect((await first?.trial)?.score).toEqual(first?.plan.score.plan);
    expect(told.some((words) => words.includes('1 of 3'))).toBe(true);
    const alone = await createInPlaceEngine().plan(file, options).result;
    expect(alone).toEqual(last);
  });

  it('is left out where nobody asks for it', async () => {
    let partials = 0;
    await createInPlaceEngine().plan(file, { worlds: 2, waves: 2 }, ({ partial }) => {
      if (partial !== undefined) partials++;
    }).result;
    expect(partials).toBe(0);
  });
});
