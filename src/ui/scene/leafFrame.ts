/** A blade in the world. */
import { add, cross, scale, type Vec3 } from '../../geometry/vec.ts';
import type { LeafBlade } from '../../growth/canopy.ts';

/** The point of the world at [along, across] of the unit outline. */
export const worldFromOutline = (leaf: LeafBlade, [u, v]: readonly [number, number]): Vec3 =>
  add(leaf.bladeFrom, add(scale(leaf.along, u * leaf.midribM), scale(leaf.across, v * leaf.acrossScaleM)));

/** Unit vector out of the upper side of the blade. */
export const upperSideOf = (leaf: LeafBlade): Vec3 => cross(leaf.across, leaf.along);

/** Every outline of the leaves in the world as separate stretches: six numbers each, both ends. */
export function outlineStretches(
  leaves: readonly LeafBlade[],
  outline: readonly (readonly [number, number])[],
): Float32Array {
  const ends = new Float32Array(leaves.length * outline.length * 6);
  let at = 0;
  for (const leaf of leaves) {
    const corners = outline.map((corner) => worldFromOutline(leaf, corner));
    corners.forEach((corner, i) => {
      ends.set(corner, at);
      ends.set(corners[(i + 1) % corners.length] as Vec3, at + 3);
      at += 6;
    });
  }
  return ends;
}
