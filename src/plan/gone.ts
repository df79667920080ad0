/** What a list of cuts takes, as ids of the canopy's owners. */
import type { Tree } from '../geometry/tree.ts';
import { type CutEnd, cutEndId } from '../growth/cutEnds.ts';
import type { CutToMake } from './applyCuts.ts';

/**
 * Ids at which something goes; what grew from them goes with them. A shortened axis stays itself and loses its end, and
 * the branches and buds on that end.
 */
export function goneIds(tree: Tree, cuts: readonly CutToMake[]): Set<string> {
  const gone = new Set(cuts.filter((cut) => !shortens(cut)).map(({ target }) => target));
  for (const end of cutEnds(cuts)) {
    gone.add(cutEndId(end));
    for (const axis of tree.axes) {
      if (axis.parentId === end.axisId && axis.atM > end.atM) gone.add(axis.id);
      if (axis.id === end.axisId) for (const bud of axis.buds) if (bud.atM > end.atM) gone.add(bud.id);
    }
  }
  return gone;
}

const shortens = ({ kind, atM }: CutToMake): boolean => kind !== 'rub off bud' && atM > 0;

/** The ends of branches that the cuts shorten. */
export const cutEnds = (cuts: readonly CutToMake[]): CutEnd[] =>
  cuts.filter(shortens).map(({ target, atM }) => ({ axisId: target, atM }));

/** Where shortened axes end, metres along them; by id. */
export function keptLengths(cuts: readonly CutToMake[]): ReadonlyMap<string, number> {
  const keptToM = new Map<string, number>();
  for (const { axisId, atM } of cutEnds(cuts)) {
    keptToM.set(axisId, Math.min(atM, keptToM.get(axisId) ?? Number.POSITIVE_INFINITY));
  }
  return keptToM;
}
