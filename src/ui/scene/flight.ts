/** The camera's way from one place to another, round the tree rather than through it. */
import { add, distance, lerp, normalize, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { bearingDeg, direction, elevationDeg, turnDeg } from '../../geometry/world.ts';
import type { Framing } from './framing.ts';

/** Slow at both ends (Hermite's cubic). */
const eased = (t: number): number => t * t * (3 - 2 * t);

/** Where the camera is when the share `t` (0 to 1) of the time is over. */
export function between(from: Framing, to: Framing, t: number): Framing {
  const s = eased(Math.min(1, Math.max(0, t)));
  if (s === 1) return to;
  const [fromOffset, toOffset] = [sub(from.eye, from.target), sub(to.eye, to.target)];
  const [fromWay, toWay] = [normalize(fromOffset), normalize(toOffset)];
  const bearing = bearingDeg(fromWay) + s * turnDeg(bearingDeg(fromWay), bearingDeg(toWay));
  const elevation = elevationDeg(fromWay) + s * (elevationDeg(toWay) - elevationDeg(fromWay));
  const [fromM, toM] = [distance(from.eye, from.target), distance(to.eye, to.target)];
  const target: Vec3 = lerp(from.target, to.target, s);
  const eye = add(target, scale(direction(bearing, elevation), fromM + s * (toM - fromM)));
  if (from.pxPerM === undefined || to.pxPerM === undefined) return { eye, target };
  return { eye, target, pxPerM: from.pxPerM * (to.pxPerM / from.pxPerM) ** s };
}
