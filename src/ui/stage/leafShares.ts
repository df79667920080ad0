/** What each leaf of the drawn canopy is coloured by. */
import type { NodeLight } from '../../engine/reports.ts';
import type { Canopy } from '../../growth/canopy.ts';

/** What gives a leaf its colour: its whole shoot, the sensor at its own node, or its own two faces. */
export const colourings = ['shoot', 'node', 'leaf'] as const;
export type Colouring = (typeof colourings)[number];

export interface KnownLight {
  /** Share of open sky by id of shoot (axis or bud). A leaf of an id that is not in it has no light yet. */
  readonly shoots: ReadonlyMap<string, number>;
  readonly nodes: readonly NodeLight[];
  /** Light on the leaf at each node; empty where it is not known. */
  readonly leaves: readonly NodeLight[];
}

/** In the order of `canopy.leaves`; NaN where nothing is known. Where the finer figure is missing the shoot's stands in. */
export function leafShares(canopy: Canopy, light: KnownLight, by: Colouring): Float32Array {
  const fine = by === 'shoot' ? [] : by === 'node' ? light.nodes : light.leaves;
  const ofShoot = new Map<string, Map<number, number>>();
  for (const { shootId, node, share } of fine) {
    const known = ofShoot.get(shootId) ?? new Map<number, number>();
    ofShoot.set(shootId, known.set(node, share));
  }
  return Float32Array.from(canopy.leaves, ({ owner, node }) => {
    const id = canopy.owners[owner]?.id ?? '';
    const share = light.shoots.get(id);
    return share === undefined ? Number.NaN : (ofShoot.get(id)?.get(node) ?? share);
  });
}
