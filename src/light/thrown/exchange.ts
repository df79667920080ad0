/** The light that patches send each other. */
import { fixedOwner, type Surface } from '../../geometry/surface.ts';
import { cross, distance, dot, length, lerp, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { firstMetSteps } from '../look/firstMet.ts';
import { lastOf } from '../trace/wave.ts';
import { cornersOf, type Patch } from './patches.ts';

/** The part of a polygon that lies before a plane through the origin: Sutherland & Hodgman 1974, one plane. */
function before(polygon: readonly Vec3[], normal: Vec3): Vec3[] {
  return polygon.flatMap((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Vec3;
    const [da, db] = [dot(a, normal), dot(b, normal)];
    const crossing = da >= 0 !== db >= 0 ? [lerp(a, b, da / (da - db))] : [];
    return da >= 0 ? [a, ...crossing] : crossing;
  });
}

/**
 * Share of the light of a sensor that an evenly bright patch with nothing before it would fill: Lambert 1760, Photometria; as the contour
 * sum over its edges of angle seen x cosine of the edge's plane to the normal, over 2 pi. 0 from behind the patch.
 */
export function seenShare(point: Vec3, normal: Vec3, patch: Patch): number {
  if (!(dot(sub(point, patch.corner), patch.normal) > 0)) return 0;
  const polygon = before(
    cornersOf(patch).map((corner) => sub(corner, point)),
    normal,
  );
  let sum = 0;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Vec3;
    const plane = cross(a, b);
    const size = length(plane);
    if (size > 0) sum += (Math.atan2(size, dot(a, b)) * dot(plane, normal)) / size;
  });
  return Math.abs(sum) / (2 * Math.PI);
}

/**
 * Entry p * count + q: share of patch p's light that patch q sends, were it of brightness 1 (Lambert). From one point of each patch to one
 * point of each other: whether something fixed stands between them; the tree itself is left out.
 * @param points one of each patch, in their order
 */
export function exchange(
  patches: readonly Patch[],
  points: readonly Vec3[],
  surfaces: readonly Surface[],
): Float64Array {
  const shares = new Float64Array(patches.length ** 2);
  const fixed = [...surfaces.keys()].filter((i) => surfaces[i]?.owner === fixedOwner);
  const things = fixed.map((i) => surfaces[i] as Surface);
  patches.forEach(({ normal, surface }, p) => {
    const point = points[p] as Vec3;
    const seen = patches.map((patch) => (patch.normal === normal ? 0 : seenShare(point, normal, patch)));
    const facing = [...patches.keys()].filter((q) => q !== p && (seen[q] as number) > 0);
    const to = facing.map((q) => {
      const other = points[q] as Vec3;
      return scale(sub(other, point), 1 / distance(other, point));
    });
    const receiver = { point, normal, sides: 'one', onSurface: fixed.indexOf(surface) } as const;
    const { first } = lastOf(firstMetSteps(things, receiver, to));
    facing.forEach((q, k) => {
      const met = first[k] as number;
      // The ground is no surface: nothing is met on the way to it.
      const isFree = met < 0 ? (patches[q] as Patch).surface < 0 : fixed[met] === patches[q]?.surface;
      if (isFree) shares[p * patches.length + q] = seen[q] as number;
    });
  });
  return shares;
}
