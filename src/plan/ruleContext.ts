/** What a rule looks at: the tree as it stands after the rules before it. */
import { pathLengthM, pointAt } from '../geometry/path.ts';
import { type PlacedAxis, placeTree, type Stance, type Tree } from '../geometry/tree.ts';
import { add, scale, sub, type Vec3 } from '../geometry/vec.ts';
import type { FigValues } from '../species/fig.ts';

export interface RuleContext {
  readonly tree: Tree;
  /** Every axis in the world, by id, parents first. */
  readonly placed: ReadonlyMap<string, PlacedAxis>;
  readonly values: FigValues;
  /** Height of the soil at the trunk, metres in the world. */
  readonly soilM: number;
  readonly trunk: PlacedAxis;
  /** Children of an axis, in the order of the tree. */
  readonly childrenOf: (id: string) => readonly PlacedAxis[];
  /** Level distance from the trunk's own line to the farthest wood, metres. */
  readonly crownRadiusM: number;
  /** How far a point lies from the trunk's own line, on the level, metres. */
  readonly fromTrunkLineM: (point: Vec3) => number;
}

export function ruleContext(tree: Tree, stance: Stance, values: FigValues): RuleContext {
  const placed = placeTree(tree, stance);
  const trunk = [...placed.values()].find((axis) => axis.parent === null);
  if (trunk === undefined) throw new Error(`ruleContext: a tree needs a trunk, got ${tree.axes.length} axes`);
  const children = new Map<string, PlacedAxis[]>();
  for (const axis of placed.values()) {
    const parentId = axis.axis.parentId;
    if (parentId !== null) children.set(parentId, [...(children.get(parentId) ?? []), axis]);
  }
  const fromTrunkLineM = (point: Vec3): number => {
    const onTrunk = trunkLineAt(trunk, point[1]);
    return Math.hypot(point[0] - onTrunk[0], point[2] - onTrunk[2]);
  };
  let crownRadiusM = 0;
  for (const axis of placed.values()) {
    for (const point of axis.path) crownRadiusM = Math.max(crownRadiusM, fromTrunkLineM(point));
  }
  return {
    tree,
    placed,
    values,
    soilM: stance.foot[1],
    trunk,
    childrenOf: (id) => children.get(id) ?? [],
    crownRadiusM,
    fromTrunkLineM,
  };
}

/** The trunk's line at a height; above its top and below its foot it goes on straight up and down. */
function trunkLineAt(trunk: PlacedAxis, heightM: number): Vec3 {
  const { path } = trunk;
  for (let i = 1; i < path.length; i++) {
    const [from, to] = [path[i - 1] as Vec3, path[i] as Vec3];
    if (heightM >= from[1] && heightM <= to[1] && to[1] > from[1]) {
      return add(from, scale(sub(to, from), (heightM - from[1]) / (to[1] - from[1])));
    }
  }
  return heightM < (path[0] as Vec3)[1] ? (path[0] as Vec3) : pointAt(path, pathLengthM(path));
}

/** Green growth of this season: it stands in leaf and carries no wood of its own. */
export const isGreen = (context: RuleContext, axis: PlacedAxis): boolean =>
  axis.axis.foliage !== null && context.childrenOf(axis.axis.id).length === 0;

/** Whether the tree was sketched with leaves on it, suckers aside. */
export const standsInLeaf = ({ axes }: Tree): boolean =>
  axes.some(({ kind, foliage }) => kind !== 'sucker' && (foliage?.count ?? 0) > 0);

/** Straight from the base of an axis to the point so far along it. */
export const chordOf = (axis: PlacedAxis, fromM: number, toM: number): Vec3 =>
  sub(pointAt(axis.path, Math.min(toM, axis.lengthM)), pointAt(axis.path, Math.min(fromM, axis.lengthM)));
