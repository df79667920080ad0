/** Which axes and buds a list of cuts takes. */
import type { Tree } from '../geometry/tree.ts';
import type { CutToMake } from './applyCuts.ts';

/**
 * Ids of the axes and buds at which something goes; what grew from them goes with them. A shortened axis stays itself and
 * loses the branches and buds beyond the cut: its own outer wood, at most a tip, is not told apart from the rest.
 */
export function goneIds(tree: Tree, cuts: readonly CutToMake[]): Set<string> {
  const gone = new Set<string>();
  for (const { kind, target, atM } of cuts) {
    if (kind === 'rub off bud' || atM === 0) {
      gone.add(target);
      continue;
    }
    for (const axis of tree.axes) {
      if (axis.parentId === target && axis.atM > atM) gone.add(axis.id);
      if (axis.id === target) for (const bud of axis.buds) if (bud.atM > atM) gone.add(bud.id);
    }
  }
  return gone;
}

/** Where shortened axes end, metres along them. */
export const keptLengths = (cuts: readonly CutToMake[]): ReadonlyMap<string, number> =>
  new Map(
    cuts.filter((cut) => cut.kind !== 'rub off bud' && cut.atM > 0).map((cut) => [cut.target, cut.atM]),
  );
