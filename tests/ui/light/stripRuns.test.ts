import { describe, expect, it } from 'vitest';
import { random01 } from '../../../src/geometry/random.ts';
import { runsPath, stepAcross, stripRuns } from '../../../src/ui/sheets/light/stripRuns.ts';

describe('the strip of a day', () => {
  it('joins steps of like sun and leaves shade out', () => {
    expect(stripRuns([0, 1, 1, 0.4, 0, 0, 0.7])).toEqual([
      { from: 1, to: 3, level: 3 },
      { from: 3, to: 4, level: 1 },
      { from: 6, to: 7, level: 2 },
    ]);
    expect(stripRuns([])).toEqual([]);
    expect(stripRuns([0, 0])).toEqual([]);
  });

  it('never hides a fleck, however small', () => {
    expect(stripRuns([0, 0.01, 0])).toEqual([{ from: 1, to: 2, level: 1 }]);
  });

  it('covers every step in the sun once and no other (seed 7)', () => {
    const sunlit = Array.from({ length: 93 }, (_, i) => Math.max(0, 2 * random01(7, i) - 0.9));
    const covered = new Array<number>(sunlit.length).fill(0);
    for (const { from, to } of stripRuns(sunlit)) {
      for (let i = from; i < to; i++) covered[i] = (covered[i] ?? 0) + 1;
    }
    expect(covered).toEqual(sunlit.map((share) => (share > 0 ? 1 : 0)));
  });

  it('draws the runs of one strength as boxes one high', () => {
    expect(runsPath(stripRuns([0, 1, 1, 0.4]), 3)).toBe('M1 0H3V1H1Z');
    expect(runsPath(stripRuns([0, 1, 1, 0.4]), 2)).toBe('');
  });

  it('finds the step under a finger, and stays within the day', () => {
    expect([-0.1, 0, 0.249, 0.25, 0.999, 1, 3].map((at) => stepAcross(at, 4))).toEqual([0, 0, 0, 1, 3, 3, 3]);
  });
});
