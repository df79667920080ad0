/** Solids of revolution as triangles: what round wood and round crowns become for programs that know only triangles. */
import { add, anyPerpendicular, cross, scale, type Vec3 } from '../../geometry/vec.ts';

export type Triangle = readonly [Vec3, Vec3, Vec3];

/** A circle of the solid, square to the axis. */
export interface Ring {
  /** Along the axis from the foot, metres. */
  readonly atM: number;
  /** 0 is a pole. */
  readonly radiusM: number;
}

/**
 * A regular polygon with the perimeter of a circle of radius 1 has this radius. Its mean width over all sides from which
 * it is seen is then the circle's (Cauchy: mean width of a convex outline is perimeter / pi).
 */
export const sameWidth = (sides: number): number => Math.PI / sides / Math.sin(Math.PI / sides);

/**
 * The solid whose outline runs from ring to ring; closed when the first and the last are poles.
 * @param axis unit vector
 */
export function revolve(foot: Vec3, axis: Vec3, rings: readonly Ring[], sides: number): Triangle[] {
  const across = anyPerpendicular(axis);
  const beside = cross(axis, across);
  const corner = ({ atM, radiusM }: Ring, side: number): Vec3 => {
    const turn = (2 * Math.PI * (side % sides)) / sides;
    const out = add(scale(across, Math.cos(turn)), scale(beside, Math.sin(turn)));
    return add(add(foot, scale(axis, atM)), scale(out, radiusM * sameWidth(sides)));
  };
  const triangles: Triangle[] = [];
  for (let i = 1; i < rings.length; i++) {
    const [low, high] = [rings[i - 1] as Ring, rings[i] as Ring];
    for (let side = 0; side < sides; side++) {
      const [a, b] = [corner(low, side), corner(low, side + 1)];
      const [c, d] = [corner(high, side), corner(high, side + 1)];
      if (low.radiusM > 0) triangles.push([a, b, d]);
      if (high.radiusM > 0) triangles.push([a, d, c]);
    }
  }
  return triangles;
}
