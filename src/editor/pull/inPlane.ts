/** Turning and stretching within a plane: what lies square to the plane keeps its depth to the last bit. */
import { add, cross, dot, scale, type Vec3 } from '../../geometry/vec.ts';

/** Two unit directions that span the plane square to `facing`; along axes of the world where it faces one. */
export function spanOf(facing: Vec3): readonly [Vec3, Vec3] {
  const levelM = Math.hypot(facing[0], facing[2]);
  const first: Vec3 = levelM === 0 ? [1, 0, 0] : [facing[2] / levelM, 0, -facing[0] / levelM];
  return [first, cross(facing, first)];
}

export interface InPlane {
  /** The length of the change's own vectors before and after, within the plane. */
  readonly stretch: number;
  readonly turnRad: number;
}

/** Coordinates in the plane. */
export const flat = ([a, b]: readonly [Vec3, Vec3], v: Vec3): readonly [number, number] => [
  dot(a, v),
  dot(b, v),
];

/** The turn and stretch that bring one vector of the plane to another. */
export const fromTo = (
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
): InPlane => ({
  stretch: Math.hypot(x1, y1) / Math.hypot(x0, y0),
  turnRad: Math.atan2(x0 * y1 - y0 * x1, x0 * x1 + y0 * y1),
});

/** A direction or offset so turned and stretched. */
export function changed(v: Vec3, span: readonly [Vec3, Vec3], { stretch, turnRad }: InPlane): Vec3 {
  const [x, y] = flat(span, v);
  const [c, s] = [stretch * Math.cos(turnRad), stretch * Math.sin(turnRad)];
  return add(v, add(scale(span[0], c * x - s * y - x), scale(span[1], s * x + c * y - y)));
}
