/** Shoots kept against figs: Caetano et al. 2005, Rev. Bras. Frutic. 27(3), 16 to 32 shoots a tree. */
import { expect, it } from 'vitest';
import { candidatesOf } from '../../../src/plan/candidates.ts';
import { goneIds } from '../../../src/plan/gone.ts';
import { ruleContext } from '../../../src/plan/ruleContext.ts';
import { seasonLight } from '../../../src/plan/tracedCanopy.ts';
import { trialContext, tryThese } from '../../../src/plan/trial.ts';
import { workYear } from '../../../src/plan/windows.ts';
import { bud, limb, planInput, stance, straight, traced, tree, trunk } from '../../plan/smallTree.ts';

const limbs = [11, 103, 188, 277].map((bearing, l) =>
  limb(`limb-${l}`, bearing, {
    atM: 0.41 + 0.05 * l,
    path: straight(0.58, bearing, 44),
    buds: Array.from({ length: 8 }, (_, i) => bud(`${l}-${i}`, 0.12 + 0.06 * i, (137.5 * i) % 360)),
  }),
);
const input = planInput(tree(trunk(), ...limbs), { bearsFirstCrop: false });

/** Score with every n-th of eight buds on each limb kept, grown as strong as that leaves them. */
function scoreWith(perLimb: number) {
  const { season } = workYear(input);
  const all = candidatesOf(ruleContext(input.tree, stance, input.values), 'bud break');
  const keeps = (i: number): boolean =>
    Math.floor(((i % 8) + 1) * (perLimb / 8)) > Math.floor((i % 8) * (perLimb / 8));
  const cuts = all
    .filter((_, i) => !keeps(i))
    .map(({ id }) => ({ id, kind: 'rub off bud' as const, target: id, atM: 0 }));
  const grown = traced(input, goneIds(input.tree, cuts));
  return tryThese(trialContext(grown, seasonLight(input, season), cuts, input, 2026), cuts).score;
}

it('more shoots make more leaf but each bears less, and figs do not keep pace (direction only)', () => {
  // The trial: leaf area rose with shoots throughout, yield peaked at 24 of 16-32, held back by shade inside. Spacing, kind and
  // pruning (to stubs) differ from this tree, so no place of the peak is asked for.
  const scores = [4, 6, 8].map(scoreWith);
  expect(scores.map(({ shootCount }) => shootCount)).toEqual([16, 24, 32]);
  const [few, some, many] = scores as [(typeof scores)[0], (typeof scores)[0], (typeof scores)[0]];
  expect(some.leafAreaM2).toBeGreaterThan(few.leafAreaM2);
  expect(many.leafAreaM2).toBeGreaterThan(some.leafAreaM2);
  const perShoot = scores.map(({ ripeFigs, shootCount }) => ripeFigs / shootCount) as [
    number,
    number,
    number,
  ];
  expect(perShoot[1]).toBeLessThan(perShoot[0]);
  expect(perShoot[2]).toBeLessThan(perShoot[1]);
  expect(many.ripeFigs / few.ripeFigs).toBeLessThan(2 * 0.9);
});
