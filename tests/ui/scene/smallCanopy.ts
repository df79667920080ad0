/** A trunk with a limb that bears a shoot with two leaves, and a grown bud with one. */

import type { Vec3 } from '../../../src/geometry/vec.ts';
import type { Canopy, LeafBlade } from '../../../src/growth/canopy.ts';

const leaf = (owner: number, node: number, bladeFrom: Vec3): LeafBlade => ({
  owner,
  node,
  petioleFrom: [bladeFrom[0] - 0.05, bladeFrom[1], bladeFrom[2]],
  bladeFrom,
  along: [1, 0, 0],
  across: [0, 0, 1],
  midribM: 0.21,
  acrossScaleM: 0.19,
  areaM2: 0.03,
});

export const smallCanopy: Canopy = {
  owners: [
    null,
    { id: 'trunk', kind: 'axis', parent: 0, leafy: false },
    { id: 'limb', kind: 'axis', parent: 1, leafy: false },
    { id: 'shoot', kind: 'axis', parent: 2, leafy: true },
    { id: 'bud-7', kind: 'bud', parent: 1, leafy: true },
  ],
  leaves: [leaf(3, 1, [0.5, 1.1, 0]), leaf(3, 2, [0.5, 1.3, 0.02]), leaf(4, 1, [-0.1, 0.8, -0.3])],
  wood: [
    { owner: 1, from: [0, 0.4, 0], to: [0, 0.7, 0], fromRadiusM: 0.03, toRadiusM: 0.025 },
    { owner: 1, from: [0, 0.7, 0], to: [0.02, 1, 0], fromRadiusM: 0.025, toRadiusM: 0.02 },
    { owner: 2, from: [0, 0.7, 0], to: [0.3, 0.9, 0], fromRadiusM: 0.014, toRadiusM: 0.011 },
    { owner: 2, from: [0.3, 0.9, 0], to: [0.45, 1.1, 0], fromRadiusM: 0.011, toRadiusM: 0.008 },
    { owner: 3, from: [0.45, 1.1, 0], to: [0.47, 1.5, 0], fromRadiusM: 0.006, toRadiusM: 0.003 },
    { owner: 4, from: [0.01, 0.75, -0.025], to: [-0.05, 0.95, -0.3], fromRadiusM: 0.005, toRadiusM: 0.003 },
  ],
  nodes: [],
  shoots: [],
  outline: [
    [0, 0],
    [0.3, 0.5],
    [1, 0],
    [0.3, -0.5],
  ],
};
