/** The least canopy that can bear: nodes and shoots, without leaves or wood. */
import type { Canopy, ShootNode } from '../../src/growth/canopy.ts';
import { straight } from './smallTree.ts';

/** Two shoots with the given numbers of nodes, one and two of them blind. */
export function twoShoots(counts: readonly [number, number]): Canopy {
  const nodesOf = (owner: number): ShootNode[] =>
    Array.from({ length: counts[owner - 1] as number }, (_, i) => ({
      owner,
      node: i + 1,
      point: [0, 1, 0],
      atM: 0.07 * (i + 1),
    }));
  const shoot = (owner: number, blindNodes: number) => ({
    owner,
    id: `s${owner}`,
    name: `Shoot ${owner}`,
    path: straight(0.3, 0, 45),
    lengthM: 0.3,
    baseDiameterM: 0.008,
    vigour: 1,
    blindNodes,
    leafAreaM2: 0.21,
  });
  return {
    owners: [null, ...[1, 2].map((i) => ({ id: `s${i}`, kind: 'axis', parent: 0, leafy: true }) as const)],
    leaves: [],
    wood: [],
    nodes: [...nodesOf(1), ...nodesOf(2)],
    shoots: [shoot(1, 1), shoot(2, 2)],
    outline: [],
  };
}
