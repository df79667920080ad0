import { expect, it } from 'vitest';
import { ruleContext } from '../../../src/plan/ruleContext.ts';
import { cutAreaShare } from '../../../src/plan/yearlyLimit.ts';
import { axis, stance, straight, tree, trunk, values } from '../../plan/smallTree.ts';

it('takes 48 cuts of 50 mm for one of 346 mm (draft annexes of BS 3998:2010, as quoted by a practitioner)', () => {
  const branches = Array.from({ length: 48 }, (_, i) =>
    axis(`b${i}`, 'trunk', { atM: 0.1 + 0.01 * i, path: straight(0.7, 7.5 * i, 40), baseDiameterM: 0.05 }),
  );
  const of = tree(trunk({ baseDiameterM: 0.346, tipDiameterM: 0.346 }), ...branches);
  const cuts = branches.map(({ id }) => ({ kind: 'remove', target: id, atM: 0 }) as const);
  // Printed to a millimetre: 48 x 50^2 is 346.4^2, 0.3 % more than 346^2.
  expect(Math.abs(cutAreaShare(ruleContext(of, stance, values), cuts) - 1)).toBeLessThan(0.003);
});
