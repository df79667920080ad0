/** Crowded trees as search problems, for the tests of search and bound. */
import type { Tree } from '../../src/geometry/tree.ts';
import { candidatesOf } from '../../src/plan/candidates.ts';
import { ruleContext } from '../../src/plan/ruleContext.ts';
import { type ThinProblem, thinProblem } from '../../src/plan/thin.ts';
import { workYear } from '../../src/plan/windows.ts';
import { figValues } from '../../src/species/fig.ts';
import { axis, bud, limb, planInput, stance, straight, traced, tree, trunk } from './smallTree.ts';

/** Three short limbs close together with many buds: they shade each other. */
function crowdedTree(budCount: number): Tree {
  const limbs = [17, 139, 262].map((bearing, l) =>
    limb(`limb-${l}`, bearing, {
      path: straight(0.31, bearing, 47),
      atM: 0.43 + 0.06 * l,
      buds: Array.from({ length: Math.ceil((budCount - l) / 3) }, (_, i) =>
        bud(`b-${l}-${i}`, 0.11 + 0.055 * i, (i * 137.5) % 360),
      ),
    }),
  );
  return tree(trunk(), ...limbs);
}

interface Given {
  readonly perLimb?: number;
  /** Ids that the grower keeps, and ids that go whatever the search finds. */
  readonly pinned?: readonly string[];
  readonly settled?: readonly string[];
  readonly potVolumeL?: number;
}

export function crowdedProblem(budCount: number, seed: number, given: Given = {}): ThinProblem {
  const { perLimb = 3, pinned = [], settled = [], potVolumeL = null } = given;
  const values = figValues({ shootsPerScaffold: perLimb, keptShootSpacingCm: 12 });
  const input = planInput(crowdedTree(budCount), { seed, leafSeed: seed, values, potVolumeL });
  const { stage } = workYear(input);
  const candidates = candidatesOf(ruleContext(input.tree, stance, input.values), stage);
  return thinProblem({
    tree: input.tree,
    traced: traced(input),
    values: input.values,
    candidates: candidates.filter(({ id }) => !pinned.includes(id) && !settled.includes(id)),
    pinned: candidates.filter(({ id }) => pinned.includes(id)),
    settled: new Set(settled),
  });
}

/** The same limbs with shoots in leaf in place of buds, of which at most a third of the leaves may go. */
export function leafyProblem(shootCount: number, seed: number): ThinProblem {
  const shoots = crowdedTree(shootCount).axes.flatMap(({ id, buds }) =>
    buds.map((one) =>
      axis(one.id, id, {
        kind: 'shoot',
        atM: one.atM,
        path: straight(0.34, one.aroundDeg, 51),
        foliage: { count: 8, midribM: 0.21, source: 'measured' },
      }),
    ),
  );
  const bare = crowdedTree(shootCount).axes.map((one) => ({ ...one, buds: [] }));
  const input = planInput(tree(...bare, ...shoots), { seed, leafSeed: seed, date: '2026-07-03' });
  const { stage } = workYear(input);
  return thinProblem({
    tree: input.tree,
    traced: traced(input),
    values: input.values,
    candidates: candidatesOf(ruleContext(input.tree, stance, input.values), stage),
    pinned: [],
    settled: new Set(),
  });
}
