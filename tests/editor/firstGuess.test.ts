import { describe, expect, it } from 'vitest';
import { axisOf } from '../../src/editor/edit.ts';
import { add } from '../../src/editor/edits/add.ts';
import { firstGuess } from '../../src/editor/firstGuess.ts';
import { joinedDiameterM, leftDiameterM } from '../../src/geometry/branchArea.ts';
import { smallTree } from './smallTree.ts';

describe('the thickness left at a fork', () => {
  it('is what joins with the rest to the whole, and nothing where there is no more', () => {
    expect(joinedDiameterM([leftDiameterM(0.041, [0.023, 0.017], 2), 0.023, 0.017], 2)).toBeCloseTo(
      0.041,
      12,
    );
    expect(leftDiameterM(0.02, [0.03], 2)).toBe(0);
  });
});

describe('the first guess of a new branch', () => {
  it('has the thickness that the rule of branch areas leaves beside the tip', () => {
    const west = axisOf(smallTree, 'west');
    const guess = firstGuess(smallTree, west);
    const woodM = west.baseDiameterM + (west.tipDiameterM - west.baseDiameterM) * 0.7;
    expect(guess.kind).toBe('lateral');
    expect(Math.hypot(guess.baseDiameterM, west.tipDiameterM)).toBeCloseTo(woodM, 9);
  });

  it('of a shoot has the thickness of a shoot of its length, never that of its wood', () => {
    const guess = firstGuess(smallTree, axisOf(smallTree, 'lateral'));
    // 18 mm with 100 cm, 23 mm with 150 cm, carried on to 30 cm.
    expect(guess.baseDiameterM).toBeCloseTo(0.018 * 0.3 ** (1 / 1.65), 6);
    const thin = {
      ...smallTree,
      axes: smallTree.axes.map((axis) => ({ ...axis, baseDiameterM: 0.006, tipDiameterM: 0.004 })),
    };
    const onThin = firstGuess(thin, axisOf(thin, 'lateral'));
    expect(onThin.baseDiameterM).toBeLessThan(0.0046);
    expect(add(thin, onThin).ok).toBe(true);
  });
});
