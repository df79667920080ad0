/** The tree after its cuts: a new tree, nothing edited in place. */
import { pathLengthM, pathUpTo } from '../geometry/path.ts';
import type { Axis, Tree } from '../geometry/tree.ts';
import type { Cut } from './cut.ts';

export type CutToMake = Pick<Cut, 'kind' | 'target' | 'atM'>;

/** Less wood than this on a shortened axis is a stub: the axis goes whole, metres. */
const stubM = 0.005;

/**
 * Takes off whole axes (`atM` 0) with all that grew from them, shortens others to `atM` with their buds and
 * branches beyond it, and rubs off buds. The order of the cuts does not matter.
 * Throws when a cut names no axis or bud of the tree, and when the trunk would go whole.
 */
export function applyCuts(tree: Tree, cuts: readonly CutToMake[]): Tree {
  const { rubbed, keptToM } = readCuts(tree, cuts);
  const standing = new Map<string, Axis>();
  for (const axis of tree.axes) {
    const parent = axis.parentId === null ? null : standing.get(axis.parentId);
    if (parent === undefined || (parent !== null && axis.atM > lengthOf(parent) + 1e-9)) continue;
    const toM = keptToM.get(axis.id) ?? Number.POSITIVE_INFINITY;
    if (toM < stubM) {
      if (parent === null) throw new Error(`applyCuts: the trunk cannot go whole, got a cut at ${toM} m`);
      continue;
    }
    standing.set(axis.id, shorten(withoutBuds(axis, rubbed), toM));
  }
  return { axes: [...standing.values()] };
}

function readCuts(
  tree: Tree,
  cuts: readonly CutToMake[],
): { rubbed: Set<string>; keptToM: Map<string, number> } {
  const axisIds = new Set(tree.axes.map((axis) => axis.id));
  const budIds = new Set(tree.axes.flatMap((axis) => axis.buds.map((bud) => bud.id)));
  const rubbed = new Set<string>();
  const keptToM = new Map<string, number>();
  for (const { kind, target, atM } of cuts) {
    if (kind === 'rub off bud') {
      if (!budIds.has(target)) throw new Error(`applyCuts: no bud of the tree has this id, got ${target}`);
      rubbed.add(target);
      continue;
    }
    if (!axisIds.has(target)) throw new Error(`applyCuts: no axis of the tree has this id, got ${target}`);
    if (!(atM >= 0)) throw new Error(`applyCuts: a cut lies 0 m or more along its axis, got ${atM}`);
    keptToM.set(target, Math.min(atM, keptToM.get(target) ?? Number.POSITIVE_INFINITY));
  }
  return { rubbed, keptToM };
}

const lengthOf = (axis: Axis): number => pathLengthM(axis.path);

const withoutBuds = (axis: Axis, rubbed: ReadonlySet<string>): Axis =>
  axis.buds.some((bud) => rubbed.has(bud.id))
    ? { ...axis, buds: axis.buds.filter((bud) => !rubbed.has(bud.id)) }
    : axis;

/** Wood up to `toM`: its tip as thick as it was there, leaves beyond it gone in proportion. */
function shorten(axis: Axis, toM: number): Axis {
  const wholeM = lengthOf(axis);
  if (toM >= wholeM) return axis;
  const t = toM / wholeM;
  const { foliage } = axis;
  return {
    ...axis,
    path: pathUpTo(axis.path, toM),
    tipDiameterM: axis.baseDiameterM + (axis.tipDiameterM - axis.baseDiameterM) * t,
    buds: axis.buds.filter((bud) => bud.atM <= toM),
    foliage: foliage === null ? null : { ...foliage, count: Math.round(foliage.count * t) },
  };
}
