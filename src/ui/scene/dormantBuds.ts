/** The buds of a tree file that the canopy shows no shoot for. */
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf, treeOf } from '../../document/views.ts';
import { placeBud, placeTree } from '../../geometry/tree.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import type { Canopy } from '../../growth/canopy.ts';

export interface DormantBud {
  readonly id: string;
  /** Id of the axis it sits on. */
  readonly axisId: string;
  /** On the bark. */
  readonly point: Vec3;
  /** Unit vectors: out of the bark, and along the wood. */
  readonly outward: Vec3;
  readonly along: Vec3;
}

/** Left out: buds grown into a shoot, and buds on wood that the canopy does not hold. */
export function dormantBuds(file: TreeFile, canopy: Canopy): readonly DormantBud[] {
  const inCanopy = new Set<string>();
  for (const { owner } of canopy.wood) inCanopy.add(canopy.owners[owner]?.id ?? '');
  const buds: DormantBud[] = [];
  for (const placed of placeTree(treeOf(file), stanceOf(file)).values()) {
    if (!inCanopy.has(placed.axis.id) || placed.axis.condition === 'dead') continue;
    for (const bud of placed.axis.buds) {
      if (!inCanopy.has(bud.id)) buds.push({ id: bud.id, axisId: placed.axis.id, ...placeBud(placed, bud) });
    }
  }
  return buds;
}
