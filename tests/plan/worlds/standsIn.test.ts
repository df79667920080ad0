import { describe, expect, it } from 'vitest';
import { rangeOf } from '../../../src/plan/worlds/standsIn.ts';
import { rangeText, standsText, yourCallText } from '../../../src/plan/worlds/standsWords.ts';

const confidence = {
  worlds: 32,
  yourCallBelowShare: 0.75,
  figs: {
    plan: { low: 9.31, middle: 13.7, high: 19.44 },
    doNothing: { low: 8.02, middle: 11.1, high: 17.9 },
    difference: { low: -0.43, middle: 2.6, high: 5.12 },
    betterIn: 28,
  },
};

describe('a range', () => {
  it('has a tenth of the values below, half below the middle and a tenth above', () => {
    expect(rangeOf([7, 0, 10, 4, 1, 2, 3, 5, 6, 8, 9])).toEqual({ low: 1, middle: 5, high: 9 });
    expect(rangeOf([2, 4])).toEqual({ low: 2.2, middle: 3, high: 3.8 });
  });
});

describe('how sure it is, in words', () => {
  it('names the one that might go in its place only where that is open', () => {
    const rival = { target: 'b4', branch: 'East limb', atM: 0.412, stands: 18 };
    const told = (stands: number) =>
      standsText(
        { standsIn: { worlds: 32, stands: 31, rival: { ...rival, stands } }, reasons: [] },
        confidence,
        'metric',
      );
    expect(told(18)).toBe(
      'Right in 31 of 32 plausible trees and years. Which one goes is open: the bud 41 cm along the east limb in its place is better in 14 of 32.',
    );
    expect(told(24)).toBe('Right in 31 of 32 plausible trees and years.');
  });

  it('says that dead wood goes on sight, and nothing of what the grower marked or where no worlds were asked for', () => {
    const dead = { standsIn: null, reasons: [{ rule: 'dead' }] } as const;
    expect(standsText(dead, confidence, 'metric')).toContain('on sight');
    expect(standsText(dead, null, 'metric')).toBeNull();
    expect(standsText({ standsIn: null, reasons: [{ rule: 'pinned' }] }, confidence, 'metric')).toBeNull();
  });

  it('tells the range of both and of their difference', () => {
    const text = rangeText(confidence);
    expect(text).toContain('9.3 to 19.4 ripe figs with the plan, 8.0 to 17.9 with nothing done');
    expect(text).toContain('−0.4 to +5.1');
    expect(text).toContain('28 of 32');
    expect(yourCallText(confidence)).toContain('fewer than 24 of 32');
  });
});
