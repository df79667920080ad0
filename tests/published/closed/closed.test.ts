import { describe, expect, test } from 'vitest';
import { checkCases } from '../checkCases.ts';
import { closed } from './answers.ts';
import { takenInBox } from './box.ts';
import { aboveElevation, betweenTops } from './forms.ts';

describe('closed forms', () => {
  checkCases(closed);

  test('the forms meet where they must: open level 1, an upright sensor 1/2 of an even sky and 0.396 of an overcast one', () => {
    expect(betweenTops('even', 90, 0, 180)).toBeCloseTo(1, 12);
    expect(betweenTops('overcast', 90, 0, 180)).toBeCloseTo(1, 12);
    expect(betweenTops('even', 0, 0, 90)).toBeCloseTo(0.5, 12);
    // Moon & Spencer 1942: vertical over level illumination.
    expect(betweenTops('overcast', 0, 0, 90)).toBeCloseTo(0.396, 3);
    expect(aboveElevation(0)).toBeCloseTo(1, 12);
  });

  test('in the box both leaves and walls take a good part, so that neither hides the other', () => {
    const { sides, leaves } = takenInBox(0, 94);
    expect(leaves).toBeGreaterThan(0.3);
    expect(sides).toBeGreaterThan(0.3);
  });
});
