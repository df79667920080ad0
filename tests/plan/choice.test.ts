import { describe, expect, it } from 'vitest';
import { type ChoiceProblem, chooseSets } from '../../src/plan/choice.ts';
import { drain } from './smallTree.ts';

/** Worth 10 less the square of the distance of the shoots from `best`, each shoot a little dearer than the one before. */
function peaked(count: number, best: number, most = count): ChoiceProblem & { kept: Uint8Array } {
  const kept = new Uint8Array(count).fill(1);
  const shoots = (): number => kept.reduce((sum, stands) => sum + stands, 0);
  const penalty = (): number => 1000 * Math.max(0, shoots() - most) + (shoots() === 0 ? 1e5 : 0);
  const flip = (i: number): void => {
    kept[i] = 1 - (kept[i] as number);
  };
  const value = (): number =>
    10 -
    0.07 * (shoots() - best) ** 2 -
    0.01 * kept.reduce((sum, stands, i) => sum + stands * i, 0) -
    penalty();
  return {
    kept,
    count,
    flip,
    penalty,
    value,
    valueIf: (i) => {
      flip(i);
      const then = value();
      flip(i);
      return then;
    },
    figures: () => ({
      shoots: shoots(),
      ripeFigs: 11 + shoots(),
      meanLight: 1 / (1 + shoots()),
      deepShade: 0,
    }),
  };
}

function choiceOf(count: number, best: number, most?: number) {
  const problem = peaked(count, best, most);
  for (let i = best; i < count; i++) problem.flip(i);
  return { problem, choice: drain(chooseSets(problem, problem.kept.slice())) };
}

describe('chooseSets', () => {
  it('tells of every number of shoots from one to all, and leaves the problem at the best set', () => {
    const { problem, choice } = choiceOf(11, 5);
    expect(choice.points.map(({ shoots }) => shoots)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect([...problem.kept]).toEqual([1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0]);
    expect(choice.points.every(({ ripeFigs, shoots }) => ripeFigs === 11 + shoots)).toBe(true);
  });

  it('reads gentle and bold plans on either side of the balanced one, worth nearly as much', () => {
    const { choice } = choiceOf(11, 5);
    const read = (name: 'gentle' | 'balanced' | 'bold') =>
      choice.points.find(({ reads }) => reads.includes(name))?.shoots;
    expect([read('bold'), read('balanced'), read('gentle')]).toEqual([3, 5, 7]);
    expect([...choice.kept.bold]).toEqual([1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect([...choice.kept.gentle]).toEqual([1, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0]);
  });

  it('never reads a plan that breaks the limits', () => {
    const { choice } = choiceOf(11, 5, 6);
    expect(choice.points.find(({ reads }) => reads.includes('gentle'))?.shoots).toBe(6);
    expect(choice.points.filter(({ withinLimits }) => !withinLimits).map(({ shoots }) => shoots)).toEqual([
      7, 8, 9, 10, 11,
    ]);
  });

  it('goes in strides through very many', () => {
    const { choice } = choiceOf(131, 40);
    expect(choice.points.length).toBeLessThan(70);
    expect(choice.points.at(-1)?.shoots).toBe(131);
  });
});
