/**
 * The rule of branch areas: a diameter to the power n is the sum of those it carries to that power. In trees measured n is 1.8 to 2.3
 * (Eloy 2011, Physical Review Letters 107:258101, arXiv 1105.2591; abstract seen).
 */
import { expect, it } from 'vitest';
import { balancedShootCount } from '../../../src/growth/vigour.ts';
import { figForms } from '../../../src/species/fig/forms.ts';
import { figValues } from '../../../src/species/fig.ts';

const printed = { low: 1.8, high: 2.3 };

it('has a power among those measured where thickness is drawn', () => {
  expect(figForms.branchAreaExponent.value).toBeGreaterThanOrEqual(printed.low);
  expect(figForms.branchAreaExponent.value).toBeLessThanOrEqual(printed.high);
});

it('has such a power where growth says how many shoots wood can hold, which was taken from the leaf area of apple branches', () => {
  // Wood that holds the shoots of all it carries: n is the slope of shoots over diameter, both as logarithms.
  const values = figValues({});
  const shoots = (diameterM: number): number => Math.log(balancedShootCount(diameterM, values));
  for (const [thin, thick] of [
    [0.013, 0.027],
    [0.031, 0.089],
  ] as const) {
    const power = (shoots(thick) - shoots(thin)) / Math.log(thick / thin);
    expect(power).toBeGreaterThan(printed.low);
    expect(power).toBeLessThan(printed.high);
  }
});
