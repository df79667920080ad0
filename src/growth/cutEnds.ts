/** The ends of branches that are to be shortened, told apart from the wood below the cut, so that light can do without them. */
import { distance, lerp } from '../geometry/vec.ts';
import type { Canopy, Owner, WoodStretch } from './canopy.ts';

/** All of an axis beyond `atM`, metres from its base. */
export interface CutEnd {
  readonly axisId: string;
  readonly atM: number;
}

/** Id of the owner that stands for it. */
export const cutEndId = ({ axisId, atM }: CutEnd): string => `${axisId} beyond ${atM} m`;

/** Owners of one axis from its base outwards: each holds from `fromM` to where the next begins. */
type Parts = readonly { readonly fromM: number; readonly owner: number }[];

/**
 * The same canopy, its wood, nodes and leaves beyond each end under an owner of their own. The new owners come after all
 * others, and one goes with the one below it on the same axis. Branches and buds beyond an end keep theirs. Ends
 * of axes that are gone change nothing.
 */
export function withCutEnds(canopy: Canopy, ends: readonly CutEnd[]): Canopy {
  const owners: (Owner | null)[] = [...canopy.owners];
  const partsOf = new Map<number, Parts>();
  for (const end of ends.toSorted((a, b) => a.atM - b.atM)) {
    const axis = canopy.owners.findIndex((owner) => owner?.kind === 'axis' && owner.id === end.axisId);
    const parts: Parts = partsOf.get(axis) ?? [{ fromM: 0, owner: axis }];
    const below = parts.at(-1);
    if (axis < 0 || below === undefined || below.fromM === end.atM) continue;
    owners.push({ id: cutEndId(end), kind: 'end', parent: below.owner, leafy: false });
    partsOf.set(axis, [...parts, { fromM: end.atM, owner: owners.length - 1 }]);
  }
  const ownerAt = (owner: number, atM: number): number =>
    partsOf.get(owner)?.findLast(({ fromM }) => fromM <= atM)?.owner ?? owner;
  const nodes = canopy.nodes.map((node) => ({ ...node, owner: ownerAt(node.owner, node.atM) }));
  const leaves = canopy.leaves.map((leaf, i) => ({ ...leaf, owner: nodes[i]?.owner ?? leaf.owner }));
  return { ...canopy, owners, nodes, leaves, wood: splitWood(canopy.wood, partsOf) };
}

function splitWood(wood: readonly WoodStretch[], partsOf: ReadonlyMap<number, Parts>): WoodStretch[] {
  const reachedM = new Map<number, number>();
  return wood.flatMap((stretch) => {
    const parts = partsOf.get(stretch.owner);
    if (parts === undefined) return [stretch];
    const fromM = reachedM.get(stretch.owner) ?? 0;
    const lengthM = distance(stretch.from, stretch.to);
    reachedM.set(stretch.owner, fromM + lengthM);
    return parts.flatMap(({ fromM: partFromM, owner }, i): WoodStretch[] => {
      const partToM = parts[i + 1]?.fromM ?? Number.POSITIVE_INFINITY;
      const [a, b] = [Math.max(0, partFromM - fromM), Math.min(lengthM, partToM - fromM)];
      return a < b ? [{ ...piece(stretch, a / lengthM, b / lengthM), owner }] : [];
    });
  });
}

/** The part of a stretch from one share of its length to another. */
function piece({ owner, from, to, fromRadiusM, toRadiusM }: WoodStretch, a: number, b: number): WoodStretch {
  const radiusAt = (t: number): number => fromRadiusM + (toRadiusM - fromRadiusM) * t;
  return {
    owner,
    from: lerp(from, to, a),
    to: lerp(from, to, b),
    fromRadiusM: radiusAt(a),
    toRadiusM: radiusAt(b),
  };
}
