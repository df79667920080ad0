/** From the tree's own frame, foot at the origin and turned as sketched, into the world. */
import type { Stance } from '../geometry/tree.ts';
import { add, type Vec3 } from '../geometry/vec.ts';
import { turnAboutUpright } from '../geometry/world.ts';
import type { Canopy } from './canopy.ts';

/** The canopy where it stands. */
export function standUp(canopy: Canopy, { foot, turnedDeg }: Stance): Canopy {
  const turn = (v: Vec3): Vec3 => turnAboutUpright(v, turnedDeg);
  const place = (v: Vec3): Vec3 => add(foot, turn(v));
  return {
    owners: canopy.owners,
    leaves: canopy.leaves.map((leaf) => ({
      ...leaf,
      petioleFrom: place(leaf.petioleFrom),
      bladeFrom: place(leaf.bladeFrom),
      along: turn(leaf.along),
      across: turn(leaf.across),
    })),
    wood: canopy.wood.map((stretch) => ({ ...stretch, from: place(stretch.from), to: place(stretch.to) })),
    nodes: canopy.nodes.map((node) => ({ ...node, point: place(node.point) })),
    shoots: canopy.shoots.map((shoot) => ({ ...shoot, path: shoot.path.map(place) })),
    outline: canopy.outline,
  };
}
