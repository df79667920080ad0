/** Walls and boxes as blocks in the world, and whether one stands in the way of the eye. */
import type { Surrounding, TreeFile } from '../../document/treeFile.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import { direction, rad } from '../../geometry/world.ts';

export interface Slab {
  readonly centre: Vec3;
  /** Before turning: along x, y and z. */
  readonly size: Vec3;
  /** About the upright, right-handed: from x towards north. */
  readonly turnedRad: number;
}

/** A wall, fence, hedge or box where it stands; a roof is left out. */
export function slabOf(thing: Exclude<Surrounding, { kind: 'crown' }>): Slab {
  if (thing.kind === 'box') {
    const [width, depth, height] = thing.sizeM;
    const [east, north] = thing.centre;
    return {
      centre: [east, height / 2, -north],
      size: [width, height, depth],
      turnedRad: -rad(thing.turnedDeg),
    };
  }
  const [[fromEast, fromNorth], [toEast, toNorth]] = [thing.from, thing.to];
  return {
    centre: [(fromEast + toEast) / 2, thing.heightM / 2, -(fromNorth + toNorth) / 2],
    size: [Math.hypot(toEast - fromEast, toNorth - fromNorth), thing.heightM, thing.thicknessM],
    turnedRad: Math.atan2(toNorth - fromNorth, toEast - fromEast),
  };
}

/** Whether the level line from the tree to the eye crosses the block; heights are left out of account. */
export function standsBetween(slab: Slab, tree: Vec3, eye: Vec3): boolean {
  const [c, s] = [Math.cos(slab.turnedRad), Math.sin(slab.turnedRad)];
  const inSlab = (p: Vec3): readonly [number, number] => {
    const [x, z] = [p[0] - slab.centre[0], p[2] - slab.centre[2]];
    return [(c * x - s * z) / (slab.size[0] / 2), (s * x + c * z) / (slab.size[2] / 2)];
  };
  const [from, to] = [inSlab(tree), inSlab(eye)];
  let [enter, leave] = [0, 1];
  for (const axis of [0, 1] as const) {
    const [a, b] = [from[axis], to[axis]];
    if (a === b) {
      if (Math.abs(a) > 1) return false;
      continue;
    }
    const [t1, t2] = [(-1 - a) / (b - a), (1 - a) / (b - a)];
    enter = Math.max(enter, Math.min(t1, t2));
    leave = Math.min(leave, Math.max(t1, t2));
  }
  return enter < leave;
}

/** Bearings a little east of the noon sun, so that what is seen is lit. */
const sunnySide = { north: 165, south: 345 };
/** How far off the eye is taken to stand, metres. */
const eyeM = 6;

/**
 * From where the tree is looked at when nobody turned the picture: from where the grower said they look,
 * unless a wall is in the way; else from the sunny side.
 */
export function homeBearingDeg(file: TreeFile): number {
  const { viewpoint, latitudeDeg, surroundings } = file.site;
  const [east, north] = file.standing.at;
  const tree: Vec3 = [east, 0, -north];
  const sunny = latitudeDeg >= 0 ? sunnySide.north : sunnySide.south;
  if (viewpoint === null) return sunny;
  const out = direction(viewpoint.bearingDeg, 0);
  const eye: Vec3 = [tree[0] + eyeM * out[0], 0, tree[2] + eyeM * out[2]];
  const walled = surroundings.some(
    (thing) => thing.kind !== 'crown' && standsBetween(slabOf(thing), tree, eye),
  );
  return walled ? sunny : viewpoint.bearingDeg;
}
