/** A canopy and what stands around it as rays meet it: plain data, which can go to another thread. */
import type { Receiver, Surface } from '../geometry/surface.ts';
import type { Canopy } from '../growth/canopy.ts';
import { canopySurfaces, nodeReceivers } from '../growth/scene.ts';
import { leafOptics } from '../light/leafOptics.ts';
import type { PlanInput } from './input.ts';

export interface CanopyScene {
  /** Those of the canopy (`canopySurfaces`) first, then what is fixed. */
  readonly surfaces: readonly Surface[];
  /** The canopy's nodes. */
  readonly receivers: readonly Receiver[];
  /** Number of each surface that is a leaf, -1 for all else: each leaf gathers light for itself. */
  readonly group: Int32Array;
  readonly ownerCount: number;
  readonly leafCount: number;
  readonly leafAreaM2: number;
  readonly latitudeDeg: number;
  readonly seed: number;
}

export function canopyScene(canopy: Canopy, { values, fixed, site, seed }: PlanInput): CanopyScene {
  const { leaves, owners } = canopy;
  const surfaces = [...canopySurfaces(canopy, leafOptics(values)), ...fixed];
  return {
    surfaces,
    receivers: nodeReceivers(canopy),
    group: Int32Array.from(surfaces, (_, i) => (i < leaves.length ? i : -1)),
    ownerCount: owners.length,
    leafCount: leaves.length,
    leafAreaM2: leaves.reduce((sum, leaf) => sum + leaf.areaM2, 0),
    latitudeDeg: site.latitudeDeg,
    seed,
  };
}
