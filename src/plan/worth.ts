/** What each node of a canopy can bear, ready to be weighed with its light. */
import type { Canopy } from '../growth/canopy.ts';
import type { FigValues } from '../species/fig.ts';

export interface CanopyWorth {
  /** Per node of the canopy: figs that would ripen there in full light. */
  readonly figs: Float64Array;
  /** Per node: length of shoot from the node below, metres. */
  readonly stretchM: Float64Array;
  /** Per node: index of its shoot in `canopy.shoots`. */
  readonly shootOf: Int32Array;
}

/**
 * figs = set in good light x chance to ripen, 0 at blind nodes; one fig a node.
 * Nodes that grow after the canopy's own day are left out: in a season so long that they ripen, figs are too few.
 * @param ripeAt chance to ripen of the n-th bearing node of a shoot
 */
export function canopyWorth(
  canopy: Canopy,
  values: FigValues,
  ripeAt: (bearingNode: number) => number,
): CanopyWorth {
  const indexOfOwner = new Map(canopy.shoots.map((shoot, i) => [shoot.owner, i]));
  const count = canopy.nodes.length;
  const worth = {
    figs: new Float64Array(count),
    stretchM: new Float64Array(count),
    shootOf: new Int32Array(count),
  };
  const reachedM = new Float64Array(canopy.shoots.length);
  const byHeight = [...canopy.nodes.keys()].sort((a, b) => nodeAt(canopy, a).node - nodeAt(canopy, b).node);
  for (const i of byHeight) {
    const { owner, node, atM } = nodeAt(canopy, i);
    const at = shootOf(canopy, indexOfOwner, owner);
    if (at === undefined) throw new Error(`canopyWorth: node ${i} belongs to no shoot, got owner ${owner}`);
    const bearing = node - (canopy.shoots[at] as Canopy['shoots'][number]).blindNodes;
    worth.shootOf[i] = at;
    worth.stretchM[i] = Math.max(0, atM - (reachedM[at] as number));
    worth.figs[i] = bearing >= 1 ? values.nodeFruitSetFraction * ripeAt(bearing) : 0;
    reachedM[at] = atM;
  }
  return worth;
}

/** Index of the shoot that a node's owner is, or is an end of. */
function shootOf(
  canopy: Canopy,
  indexOfOwner: ReadonlyMap<number, number>,
  owner: number,
): number | undefined {
  const known = indexOfOwner.get(owner);
  const whole = canopy.owners[owner];
  return known === undefined && whole?.kind === 'end' ? shootOf(canopy, indexOfOwner, whole.parent) : known;
}

const nodeAt = (canopy: Canopy, i: number): Canopy['nodes'][number] =>
  canopy.nodes[i] as Canopy['nodes'][number];
