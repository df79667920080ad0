/** What can be pointed at on the stage: leaves that stand, all wood, and buds. */
import type { Canopy } from '../../growth/canopy.ts';
import type { DormantBud } from './dormantBuds.ts';
import { worldFromOutline } from './leafFrame.ts';
import type { Target } from './pick.ts';

/** Buds count as beads of this radius, metres. */
const budRadiusM = 0.008;

/** Targets by id. Ghosts are hit by their wood alone, so that what stands behind their leaves can be reached. */
export function pickTargets(canopy: Canopy, standing: Uint8Array, buds: readonly DormantBud[]): Target[] {
  const idOf = (owner: number): string => canopy.owners[owner]?.id ?? '';
  const targets: Target[] = [];
  for (const leaf of canopy.leaves) {
    if (standing[leaf.owner] === 0) continue;
    const corners = canopy.outline.map((corner) => worldFromOutline(leaf, corner));
    targets.push({
      id: idOf(leaf.owner),
      shape: 'face',
      node: leaf.node,
      corners,
      centre: worldFromOutline(leaf, [0.3, 0]),
      reachM: 0.8 * leaf.midribM,
    });
  }
  for (const { owner, from, to, fromRadiusM, toRadiusM } of canopy.wood) {
    targets.push({ id: idOf(owner), shape: 'wood', from, to, radiusM: Math.max(fromRadiusM, toRadiusM) });
  }
  for (const { id, point } of buds)
    targets.push({ id, shape: 'wood', from: point, to: point, radiusM: budRadiusM });
  return targets;
}
