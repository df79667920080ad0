/** How leaves are turned: the distributions of leaf angle that have closed forms in print. */
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { anyDirection, type Draw } from '../../light/trace/scene.ts';

/** Draws the normal of a leaf; which of its two sides is left open. */
export type Pose = (draw: Draw) => Vec3;

export const level: Pose = () => [0, 1, 0];
/** Leaves that stand upright, turned to all sides. */
export const upright: Pose = (draw) => leaning(Math.PI / 2, draw);
export const spherical: Pose = anyDirection;

const leaning = (inclinationRad: number, draw: Draw): Vec3 => {
  const turn = 2 * Math.PI * draw();
  const flat = Math.sin(inclinationRad);
  return [flat * Math.cos(turn), Math.cos(inclinationRad), flat * Math.sin(turn)];
};

/**
 * Density of the leaf inclination a over 0 to pi/2, relative to its greatest value: de Wit 1965, as in Ross 1981 and Wang, Li & Su
 * 2007 (planophile 2 (1 + cos 2a) / pi and so on).
 */
const densities = {
  planophile: (a: number) => (1 + Math.cos(2 * a)) / 2,
  erectophile: (a: number) => (1 - Math.cos(2 * a)) / 2,
  plagiophile: (a: number) => (1 - Math.cos(4 * a)) / 2,
  extremophile: (a: number) => (1 + Math.cos(4 * a)) / 2,
  uniform: () => 1,
};

/** Draws by rejection. */
export function deWit(kind: keyof typeof densities): Pose {
  return (draw) => {
    for (;;) {
      const inclination = (draw() * Math.PI) / 2;
      if (draw() < densities[kind](inclination)) return leaning(inclination, draw);
    }
  };
}

/**
 * Normals as on an ellipsoid whose level axes are x times the upright one (Campbell 1986, Agric. For. Meteorol. 36:317): a point
 * of the unit ball's surface goes to the ellipsoid's, with the weight of the area it brings along.
 */
export function ellipsoidal(x: number): Pose {
  const heaviest = Math.max(1, 1 / x);
  return (draw) => {
    for (;;) {
      const [a, b, c] = anyDirection(draw);
      const normal: Vec3 = [a / x, b, c / x];
      const size = Math.hypot(...normal);
      if (draw() * heaviest < size) return [normal[0] / size, normal[1] / size, normal[2] / size];
    }
  };
}

/** Extinction coefficient of ellipsoidal leaves, exact form of Campbell 1990 (Agric. For. Meteorol. 49:173). */
export function ellipsoidalK(x: number, zenithRad: number): number {
  const eccentric = Math.sqrt(Math.abs(1 - Math.min(x, 1 / x) ** 2));
  let size = 2;
  if (x < 1) size = x + Math.asin(eccentric) / eccentric;
  if (x > 1) size = x + Math.log((1 + eccentric) / (1 - eccentric)) / (2 * eccentric * x);
  return Math.sqrt(x * x + Math.tan(zenithRad) ** 2) / size;
}
