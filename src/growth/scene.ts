/** The canopy as light meets it, and the places in it where light is asked for. */
import { hashText, random01 } from '../geometry/random.ts';
import { type Optics, opaque, type Receiver, type Surface } from '../geometry/surface.ts';
import { add, cross, scale, up } from '../geometry/vec.ts';
import type { Canopy, LeafBlade } from './canopy.ts';
import { outlinePicker } from './outline.ts';

/**
 * The surfaces of a canopy: first its leaves, in the order of `canopy.leaves`, then its wood, opaque and dark.
 * Petioles are drawn but not traced: 7 cm by 3 mm is 2 cm2 beside a blade of 295 cm2, under 1 % of the shade.
 */
export function canopySurfaces(canopy: Canopy, leafOptics: Optics): Surface[] {
  const blades = canopy.leaves.map((leaf): Surface => {
    const along = scale(leaf.along, leaf.midribM);
    const across = scale(leaf.across, leaf.acrossScaleM);
    const { owner, bladeFrom: origin } = leaf;
    return { shape: 'blade', owner, optics: leafOptics, origin, along, across, outline: canopy.outline };
  });
  const stems = canopy.wood.map((stretch): Surface => ({ shape: 'stem', optics: opaque, ...stretch }));
  return [...blades, ...stems];
}

/** Level sensors that see the sky from one side, in the order of `canopy.nodes`, each shaded by every leaf but its own. */
export const nodeReceivers = ({ nodes }: Canopy): Receiver[] =>
  nodes.map(({ point }, leaf): Receiver => ({ point, normal: up, sides: 'one', onSurface: leaf }));

/**
 * The receivers of a canopy: first its nodes (`nodeReceivers`); then one point on each leaf, lit from both sides, in the
 * order of `canopy.leaves`.
 * The point on a leaf is evenly spread over the blade, and another one for each wave. It depends on seed, wave,
 * id and node alone, so that two canopies of one tree are compared with the same points.
 * `onSurface` counts as `canopySurfaces` does; where other surfaces are put first, add their number.
 */
export function canopyReceivers(canopy: Canopy, { seed, wave }: { seed: number; wave: number }): Receiver[] {
  const pick = outlinePicker(canopy.outline);
  const keys = canopy.owners.map((owner) => (owner === null ? 0 : hashText(owner.id)));
  const onLeaf = (leaf: LeafBlade, onSurface: number): Receiver => {
    const key = keys[leaf.owner] as number;
    const number = (what: number): number => random01(seed, wave, key, leaf.node, what);
    const [u, v] = pick(number(0), number(1), number(2));
    const alongPart = scale(leaf.along, u * leaf.midribM);
    const acrossPart = scale(leaf.across, v * leaf.acrossScaleM);
    const point = add(leaf.bladeFrom, add(alongPart, acrossPart));
    return { point, normal: cross(leaf.across, leaf.along), sides: 'both', onSurface };
  };
  return [...nodeReceivers(canopy), ...canopy.leaves.map(onLeaf)];
}
