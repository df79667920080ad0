/** The tree as a graph of axes. An axis is one stretch of wood that grew from one bud. */
import { outwardAt, type Path, pathLengthM, pointAt, tangentAt } from './path.ts';
import { add, type Vec3 } from './vec.ts';
import { turnAboutUpright } from './world.ts';

export type AxisKind = 'trunk' | 'scaffold' | 'lateral' | 'shoot' | 'sucker';
export type Condition = 'live' | 'dead' | 'diseased' | 'damaged';
/** The grower's word on a bud or an axis, which no plan may overrule. */
export type Pin = 'keep' | 'remove';

/** A growth point on an axis that can become a shoot. */
export interface Bud {
  readonly id: string;
  /** Distance from the base of its axis, along the wood, metres. */
  readonly atM: number;
  /** Where it sits round the wood, degrees: 0 the upper side (north, as sketched, on upright wood), clockwise seen from the tip. */
  readonly aroundDeg: number;
  readonly pin: Pin | null;
}

/** What the leaves of an axis are known to be. */
export interface Foliage {
  readonly count: number;
  /** Length of the midrib of a full-grown leaf in the middle of the shoot, metres. */
  readonly midribM: number;
  /** Where the count is from. Measured values are never overwritten by estimates. */
  readonly source: 'measured' | 'estimated';
  /** Where the midrib is from; left out: the same as the count. */
  readonly midribSource?: 'measured' | 'estimated' | undefined;
}

export const midribSource = ({ source, midribSource: own }: Foliage): 'measured' | 'estimated' =>
  own ?? source;

export interface Axis {
  readonly id: string;
  readonly name: string;
  readonly kind: AxisKind;
  /** Id of the axis it grew from; null for the trunk alone. */
  readonly parentId: string | null;
  /** Distance of its base along the parent, metres. */
  readonly atM: number;
  /** Offsets in world axes from the point `atM` on the parent; at least two, the first normally 0, 0, 0. */
  readonly path: Path;
  readonly baseDiameterM: number;
  readonly tipDiameterM: number;
  /** Calendar year in which this wood grew. */
  readonly grownIn: number;
  readonly condition: Condition;
  /** From base to tip. */
  readonly buds: readonly Bud[];
  /** Null on wood without leaves. */
  readonly foliage: Foliage | null;
  /** Whether it carried figs on the day of the sketch; left out: nothing is told of it. */
  readonly bearsFigs?: boolean | undefined;
  readonly pin: Pin | null;
}

/** Axes in such an order that each comes after its parent; the first is the trunk. */
export interface Tree {
  readonly axes: readonly Axis[];
}

/** Where the foot of the trunk stands in the world, and how far the tree was turned from its sketch. */
export interface Stance {
  readonly foot: Vec3;
  /** Clockwise, seen from above. */
  readonly turnedDeg: number;
}

/** An axis in the world. */
export interface PlacedAxis {
  readonly axis: Axis;
  readonly parent: PlacedAxis | null;
  readonly path: Path;
  readonly lengthM: number;
  /** How far the tree was turned from its sketch, clockwise seen from above: buds turn with the wood. */
  readonly turnedDeg: number;
}

/** Every axis in the world, by id, parents first. Throws when a parent is missing or comes later. */
export function placeTree(tree: Tree, stance: Stance): ReadonlyMap<string, PlacedAxis> {
  const placed = new Map<string, PlacedAxis>();
  for (const axis of tree.axes) {
    const parent = axis.parentId === null ? null : (placed.get(axis.parentId) ?? null);
    if (axis.parentId !== null && parent === null) {
      throw new Error(`placeTree: axis ${axis.id} comes before its parent ${axis.parentId}`);
    }
    const base = parent === null ? stance.foot : pointAt(parent.path, axis.atM);
    const path = axis.path.map((offset) => add(base, turnAboutUpright(offset, stance.turnedDeg)));
    placed.set(axis.id, { axis, parent, path, lengthM: pathLengthM(path), turnedDeg: stance.turnedDeg });
  }
  return placed;
}

/** The limb an axis belongs to: its forebear that grew from the trunk, or itself; null for the trunk. */
export function limbOf(axis: PlacedAxis): PlacedAxis | null {
  let limb = axis;
  while (limb.parent !== null && limb.parent.parent !== null) limb = limb.parent;
  return limb.parent === null ? null : limb;
}

/** Radius of the wood `distanceM` from its base, metres; the taper is straight. */
export function radiusAtM(placed: PlacedAxis, distanceM: number): number {
  const t = placed.lengthM > 0 ? Math.min(1, Math.max(0, distanceM / placed.lengthM)) : 0;
  const { baseDiameterM, tipDiameterM } = placed.axis;
  return (baseDiameterM + (tipDiameterM - baseDiameterM) * t) / 2;
}

/** Position on the bark of a bud, the way it points, and the growth direction of the wood there. */
export function placeBud(placed: PlacedAxis, bud: Bud): { point: Vec3; outward: Vec3; along: Vec3 } {
  const north = turnAboutUpright([0, 0, -1], placed.turnedDeg);
  const outward = outwardAt(placed.path, bud.atM, bud.aroundDeg, north);
  const r = radiusAtM(placed, bud.atM);
  const point = add(pointAt(placed.path, bud.atM), [outward[0] * r, outward[1] * r, outward[2] * r]);
  return { point, outward, along: tangentAt(placed.path, bud.atM) };
}

/** Ids of an axis and of all wood that grew from it, itself first. */
export function withDescendants(tree: Tree, id: string): readonly string[] {
  const found = new Set([id]);
  for (const axis of tree.axes) if (axis.parentId !== null && found.has(axis.parentId)) found.add(axis.id);
  return [...found];
}
