/** Pieces of walls and boxes that throw light back. */
import { fixedOwner, opaque, type Surface } from '../../geometry/surface.ts';
import { add, cross, dot, length, normalize, scale, sub, type Vec3 } from '../../geometry/vec.ts';

/** A flat piece with equal sides, or half of one, lit and seen from its front alone. */
export interface Patch {
  /** Index of the surface that it is a part of. */
  readonly surface: number;
  readonly reflectance: number;
  /** Points corner + a along + b across, a and b from 0 to 1. */
  readonly corner: Vec3;
  readonly along: Vec3;
  readonly across: Vec3;
  /** Unit vector, to the front. */
  readonly normal: Vec3;
  /** A triangle: of a + b at most 1. */
  readonly isHalf?: true;
}

/** Our choice: fine enough for the shade of a small tree on a wall. */
const patchM = 2;
const mostAlong = 3;
const mostAcross = 2;
/** Patches of a scene, at most: those that send most to the tree. Our choice; each costs rays. */
const mostPatches = 12;

/**
 * Faces of a mesh: parallelograms, two triangles [a, b, c] and [a, c, d] running anticlockwise seen from the front, and single
 * triangles, such as gables.
 */
function facesOf(surface: Surface, index: number): Patch[] {
  if (surface.shape !== 'mesh' || surface.owner !== fixedOwner || !(surface.optics.reflectance > 0))
    return [];
  const { triangles, optics } = surface;
  const faces: Patch[] = [];
  const point = (at: number): Vec3 => [
    triangles[at] as number,
    triangles[at + 1] as number,
    triangles[at + 2] as number,
  ];
  for (let at = 0; at + 9 <= triangles.length; at += 9) {
    const [a, b, c] = [point(at), point(at + 3), point(at + 6)];
    const d = parallelTo(a, b, c, at + 18 <= triangles.length ? [9, 12, 15].map((k) => point(at + k)) : []);
    const [along, across] = [sub(b, a), sub(d ?? c, a)];
    const normal = cross(along, across);
    if (d !== null) at += 9;
    if (length(normal) < 1e-9) continue;
    const { reflectance } = optics;
    const face = { surface: index, reflectance, corner: a, along, across, normal: normalize(normal) };
    faces.push(d === null ? { ...face, isHalf: true } : face);
  }
  return faces;
}

/** Fourth corner of the parallelogram that a triangle makes with the next one; null where it makes none. */
function parallelTo(a: Vec3, b: Vec3, c: Vec3, [a2, c2, d]: readonly Vec3[]): Vec3 | null {
  if (a2 === undefined || c2 === undefined || d === undefined) return null;
  const isPair = length(sub(a, a2)) + length(sub(c, c2)) < 1e-9;
  return isPair && length(sub(add(b, d), add(a, c))) <= 1e-6 ? d : null;
}

/** A point of a patch from two numbers even over 0 to 1: even over the patch. */
export function pointOf({ corner, along, across, isHalf }: Patch, a: number, b: number): Vec3 {
  const isBeyond = isHalf === true && a + b > 1;
  const [u, v] = isBeyond ? [1 - a, 1 - b] : [a, b];
  return add(corner, add(scale(along, u), scale(across, v)));
}

/** In order round it. */
export function cornersOf({ corner, along, across, isHalf }: Patch): readonly Vec3[] {
  const [far, high] = [add(corner, along), add(corner, across)];
  return isHalf === true ? [corner, far, high] : [corner, far, add(far, across), high];
}

/** A face cut into patches; the longer side may have more. Triangles stay whole. */
function cut(face: Patch): Patch[] {
  if (face.isHalf === true) return [face];
  const { corner, along, across } = face;
  const isLong = length(along) >= length(across);
  const count = (side: Vec3, most: number): number =>
    Math.max(1, Math.min(most, Math.ceil(length(side) / patchM)));
  const n = count(along, isLong ? mostAlong : mostAcross);
  const m = count(across, isLong ? mostAcross : mostAlong);
  const [u, v] = [scale(along, 1 / n), scale(across, 1 / m)];
  return Array.from({ length: n * m }, (_, i) => ({
    ...face,
    corner: add(corner, add(scale(u, i % n), scale(v, Math.floor(i / n)))),
    along: u,
    across: v,
  }));
}

const middleOf = ({ corner, along, across, isHalf }: Patch): Vec3 =>
  add(corner, scale(add(along, across), isHalf === true ? 1 / 3 : 0.5));

/** How much of it a place sees, about: its seen area over the squared distance, 0 from behind. */
function seenFrom(place: Vec3, patch: Patch): number {
  const to = sub(place, middleOf(patch));
  const areaM2 = length(cross(patch.along, patch.across)) * (patch.isHalf === true ? 0.5 : 1);
  return (areaM2 * Math.max(0, dot(to, patch.normal))) / (length(to) ** 3 + areaM2 ** 1.5);
}

/**
 * The patches of what is fixed and no perfect black that a tree round `place` stands before, those that send most first. Pots have none
 * and stay dark.
 */
export function throwingPatches(surfaces: readonly Surface[], place: Vec3): readonly Patch[] {
  return surfaces
    .flatMap(facesOf)
    .filter((face) => dot(sub(place, face.corner), face.normal) > 0)
    .flatMap(cut)
    .map((patch) => ({ patch, seen: patch.reflectance * seenFrom(place, patch) }))
    .sort((a, b) => b.seen - a.seen)
    .slice(0, mostPatches)
    .map(({ patch }) => patch);
}

/** How far the plate round a patch reaches beyond it: past any ray of a small tree. */
const plateM = 1000;
/** Things may reach so far behind a wall's plane and still stand before it. */
const planeSlackM = 0.05;

/** A dark plate in the plane of a patch, with a hole where it is. */
function plateRound({ corner, along, across, isHalf }: Patch, surface: Surface): Surface {
  const [u, v] = [scale(normalize(along), plateM), scale(normalize(across), plateM)];
  const at = (a: Vec3, b: Vec3): Vec3 => add(corner, add(a, b));
  const [far, high] = [add(along, u), add(across, v)];
  const [near, low] = [scale(u, -1), scale(v, -1)];
  const none: Vec3 = [0, 0, 0];
  const sheet = (fromA: Vec3, toA: Vec3, fromB: Vec3, toB: Vec3): Vec3[] => {
    const [a, b, c, d] = [at(fromA, fromB), at(toA, fromB), at(toA, toB), at(fromA, toB)];
    return [a, b, c, a, c, d];
  };
  const triangles = [
    ...sheet(near, none, low, high),
    ...sheet(along, far, low, high),
    ...sheet(none, along, low, none),
    ...sheet(none, along, across, high),
    ...(isHalf === true ? [at(along, none), at(along, across), at(none, across)] : []),
  ];
  return { shape: 'mesh', owner: surface.owner, optics: opaque, triangles: triangles.flat() };
}

/** Some points that hold a fixed thing between them. */
function pointsOf(surface: Surface): Vec3[] {
  if (surface.shape === 'cloud') return [surface.centre];
  if (surface.shape !== 'mesh') return [];
  const { triangles } = surface;
  return Array.from({ length: triangles.length / 3 }, (_, i) => [
    triangles[3 * i] as number,
    triangles[3 * i + 1] as number,
    triangles[3 * i + 2] as number,
  ]);
}

/**
 * What stands between a tree and a patch: the tree, what is fixed before the patch's plane, and a dark plate round the patch. A ray that
 * nothing here ends meets the patch.
 * @param treeCount surfaces that can be cut; they come first
 */
export function beforePatch(
  surfaces: readonly Surface[],
  treeCount: number,
  patch: Patch,
): readonly Surface[] {
  const { corner, normal } = patch;
  const isBefore = (point: Vec3): boolean => dot(sub(point, corner), normal) > -planeSlackM;
  const fixed = surfaces.filter(
    (surface, i) => i >= treeCount && i !== patch.surface && pointsOf(surface).every(isBefore),
  );
  return [...surfaces.slice(0, treeCount), ...fixed, plateRound(patch, surfaces[patch.surface] as Surface)];
}
