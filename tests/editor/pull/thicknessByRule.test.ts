import { expect, it } from 'vitest';
import type { TreeAxis } from '../../../src/editor/edit.ts';
import { thicknessByRuleM } from '../../../src/editor/pull/thicknessByRule.ts';
import { figForms } from '../../../src/species/fig/forms.ts';
import { smallTree } from '../smallTree.ts';

const n = figForms.branchAreaExponent.value;
const axis = (id: string) => smallTree.axes.find((one) => one.id === id) as TreeAxis;

it('a branch is as thick by the rule as its tip and what it carries together', () => {
  expect(thicknessByRuleM(smallTree, axis('east'))).toBeCloseTo((0.011 ** n + 0.021 ** n) ** (1 / n), 12);
});

it('wood that carries nothing gets what its parent has left, within bounds', () => {
  const byRuleM = thicknessByRuleM(smallTree, axis('west'));
  expect(byRuleM).toBeGreaterThan(0.3 * 0.035);
  expect(byRuleM).toBeLessThan(0.76 * 0.043);
});
