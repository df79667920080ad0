/** First-crop figs: on last year's wood, near its tips. */
import { pathLengthM } from '../geometry/path.ts';
import type { Axis, Tree } from '../geometry/tree.ts';
import type { FigValues } from '../species/fig.ts';

/** Last year's wood: without leaves, live, and of the youngest year there is before the season's own. */
export function lastYearsWood(tree: Tree, seasonYear: number): readonly Axis[] {
  const wood = tree.axes.filter((axis) => axis.foliage === null && axis.condition === 'live');
  const year = Math.max(...wood.map((axis) => axis.grownIn).filter((grown) => grown < seasonYear));
  return year >= seasonYear - 2 ? wood.filter((axis) => axis.grownIn === year) : [];
}

/** Where the nodes of an axis are: its buds and the branches that grew from buds, metres from its base, tip first. */
export function nodesFromTipM(tree: Tree, axis: Axis): readonly number[] {
  const grown = tree.axes.filter((child) => child.parentId === axis.id).map((child) => child.atM);
  return [...axis.buds.map((bud) => bud.atM), ...grown].sort((a, b) => b - a);
}

/** First-crop figs that an axis carries beyond `fromM`. */
export function firstCropFigsBeyond(tree: Tree, axis: Axis, fromM: number, values: FigValues): number {
  const bearing = nodesFromTipM(tree, axis).slice(0, values.firstCropNodesFromTip);
  return bearing.filter((atM) => atM >= fromM).length * values.firstCropHoldFraction;
}

/**
 * First-crop figs expected on the wood that stands, by the nodes of the tree as it was before any cut:
 * a cut never makes new bearing nodes. Rubbing a bud off leaves the fig bud beside it. Dropped: frost over winter, shade.
 * @param keptToM where standing axes end, metres along them; absent when whole
 */
export function firstCropFigs(
  tree: Tree,
  stands: (axisId: string) => boolean,
  keptToM: ReadonlyMap<string, number>,
  seasonYear: number,
  values: FigValues,
): number {
  let figs = 0;
  for (const axis of lastYearsWood(tree, seasonYear)) {
    if (!stands(axis.id)) continue;
    const cutM = keptToM.get(axis.id) ?? pathLengthM(axis.path);
    figs += firstCropFigsBeyond(tree, axis, 0, values) - firstCropFigsBeyond(tree, axis, cutM + 1e-9, values);
  }
  return figs;
}
