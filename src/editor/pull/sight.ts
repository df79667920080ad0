/** Where a hand points at the tree through the picture. */
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf } from '../../document/views.ts';
import { add, dot, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { rad, turnAboutUpright } from '../../geometry/world.ts';

/** A line of sight, metres. */
export interface Ray {
  readonly from: Vec3;
  /** Unit vector away from the eye. */
  readonly way: Vec3;
}

export interface Sight extends Ray {
  /** Unit vector from the middle of the picture to the eye: work planes lie square to it. */
  readonly facing: Vec3;
}

/** A ray that meets a plane at less than this runs along it: no depth could be told. */
export const grazingDeg = 10;

/**
 * Where a ray meets the plane through a point, square to `facing`; null where it grazes it or would have to run back. When the plane
 * lies square to an axis of the world, that coordinate is the point's own, to the last bit.
 */
export function pointOnPlane(ray: Ray, through: Vec3, facing: Vec3): Vec3 | null {
  const steepness = dot(ray.way, facing);
  if (Math.abs(steepness) < Math.sin(rad(grazingDeg))) return null;
  const awayM = dot(sub(through, ray.from), facing) / steepness;
  if (awayM < 0) return null;
  const [x, y, z] = add(ray.from, scale(ray.way, awayM));
  return [
    Math.abs(facing[0]) === 1 ? through[0] : x,
    Math.abs(facing[1]) === 1 ? through[1] : y,
    Math.abs(facing[2]) === 1 ? through[2] : z,
  ];
}

/** A turn by a quarter leaves a direction along an axis exactly on an axis. */
const settled = (v: Vec3): Vec3 => {
  const [x, y, z] = v.map((c) => (Math.abs(c - Math.round(c)) < 1e-12 ? Math.round(c) : c));
  return [x as number, y as number, z as number];
};

/** The same sight in the frame of the sketch: its origin the foot of the trunk, north as it was when the tree was sketched. */
export function inSketch(file: TreeFile, { from, way, facing }: Sight): Sight {
  const { foot, turnedDeg } = stanceOf(file);
  const turn = (v: Vec3): Vec3 => turnAboutUpright(v, -turnedDeg);
  return { from: turn(sub(from, foot)), way: settled(turn(way)), facing: settled(turn(facing)) };
}
