import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atRandom, evenly, inwardGone, sharedOut, takenOf } from '../../scripts/plans/rivals.ts';
import { parseTreeFile } from '../../src/document/parseTreeFile.ts';
import { planInputOf } from '../../src/engine/planInput.ts';
import { planJob } from '../../src/plan/planJob.ts';
import { drain } from '../plan/smallTree.ts';

const read = parseTreeFile(readFileSync('public/examples/potted-fig-in-leaf.json', 'utf8'));
if (!read.ok) throw new Error(read.reason);
const result = drain(planJob(planInputOf(read.file, { waves: 1, worlds: 0 })));
const { free } = result.made.work.choice;
const taken = takenOf(result).length;

describe('what a plan is compared with', () => {
  it('takes as many as the plan, by chance and at even steps, and each but once', () => {
    expect(taken).toBeGreaterThan(3);
    for (const cuts of [atRandom(result, 1, false), atRandom(result, 2, true), evenly(result)]) {
      expect(cuts).toHaveLength(result.plan.cuts.length);
      expect(new Set(cuts.map(({ target }) => target)).size).toBe(cuts.length);
    }
  });

  it('differs from draw to draw, and spares the ends of branches where it is to', () => {
    expect(atRandom(result, 1, false)).not.toEqual(atRandom(result, 2, false));
    const ends = new Set(free.filter(({ leads }) => leads).map(({ id }) => id));
    const endsGone = (draw: number, spares: boolean): number =>
      atRandom(result, draw, spares).filter(({ target }) => ends.has(target)).length;
    const sums = [false, true].map((spares) =>
      [1, 2, 3].reduce((sum, draw) => sum + endsGone(draw, spares), 0),
    );
    expect(sums[0]).toBeGreaterThan(0);
    expect(sums[1]).toBe(0);
  });

  it('takes of what sets out inward neither all nor nothing', () => {
    const count = inwardGone(result).length;
    expect(count).toBeGreaterThan(0);
    expect(count).toBeLessThan(free.length);
  });

  it('shares a number out in whole parts that add up', () => {
    expect(sharedOut(7, [3, 3, 3])).toEqual([3, 2, 2]);
    expect(sharedOut(0, [4, 5])).toEqual([0, 0]);
    expect(sharedOut(5, [9, 1])).toEqual([5, 0]);
  });
});
