/** The node whose sky is looked at, and where it is. */
import type { Vec3 } from '../../geometry/vec.ts';
import type { Canopy } from '../../growth/canopy.ts';
import type { NodePlace } from '../state/lookWork.ts';

/** Nodes of a shoot, from its base. */
export const nodesOf = (canopy: Canopy, shootId: string): readonly number[] =>
  canopy.nodes.flatMap(({ owner, node }) => (canopy.owners[owner]?.id === shootId ? [node] : []));

const isShoot = (canopy: Canopy, id: string): boolean => canopy.shoots.some((shoot) => shoot.id === id);

/**
 * The node that was chosen, while it is there and its shoot is the selected one or none is; else the middle node of the
 * selected shoot, or of the darkest.
 * @param darkest id of a shoot, for want of another
 */
export function skyPlaceIn(
  canopy: Canopy,
  chosen: NodePlace | null,
  selected: string | null,
  darkest: string,
): NodePlace {
  const wanted = selected !== null && isShoot(canopy, selected) ? selected : (chosen?.shootId ?? darkest);
  const shootId = isShoot(canopy, wanted) ? wanted : darkest;
  const nodes = nodesOf(canopy, shootId);
  if (chosen !== null && chosen.shootId === shootId && nodes.includes(chosen.node)) return chosen;
  return { shootId, node: nodes[Math.floor(nodes.length / 2)] ?? 1 };
}

/** Where a node is; null when the canopy does not have it. */
export const pointOfNode = (canopy: Canopy, { shootId, node }: NodePlace): Vec3 | null =>
  canopy.nodes.find((one) => one.node === node && canopy.owners[one.owner]?.id === shootId)?.point ?? null;
