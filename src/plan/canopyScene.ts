/** A canopy and what stands around it as rays meet it: plain data, which can go to another thread. */
import type { Receiver, Surface } from '../geometry/surface.ts';
import { turnSurface } from '../geometry/turnSurface.ts';
import type { Canopy } from '../growth/canopy.ts';
import { canopySurfaces, nodeReceivers } from '../growth/scene.ts';
import { leafOptics } from '../light/leafOptics.ts';
import { poseCount, poseDeg } from '../light/sky/turns.ts';
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
  /**
   * Of a pot that is turned: what is fixed as it stands about the tree in each pose, as the tree, which is drawn as it stands in pose
   * 0, would see it. In each as many surfaces in the same order, the last of `surfaces`. Null for a tree that stays.
   */
  readonly fixedByPose: readonly (readonly Surface[])[] | null;
  readonly latitudeDeg: number;
  readonly seed: number;
}

export function canopyScene(canopy: Canopy, input: PlanInput): CanopyScene {
  const { values, fixed, site, seed, stance } = input;
  const { leaves, owners } = canopy;
  const surfaces = [...canopySurfaces(canopy, leafOptics(values)), ...fixed];
  return {
    surfaces,
    receivers: nodeReceivers(canopy),
    group: Int32Array.from(surfaces, (_, i) => (i < leaves.length ? i : -1)),
    ownerCount: owners.length,
    leafCount: leaves.length,
    leafAreaM2: leaves.reduce((sum, leaf) => sum + leaf.areaM2, 0),
    fixedByPose:
      site.quarterTurns === undefined
        ? null
        : Array.from({ length: poseCount }, (_, pose) =>
            fixed.map((surface) => turnSurface(surface, stance.foot, -poseDeg(pose))),
          ),
    latitudeDeg: site.latitudeDeg,
    seed,
  };
}

/** All surfaces in each pose; null for a tree that stays. */
export const posesOf = ({ surfaces, fixedByPose }: CanopyScene): readonly (readonly Surface[])[] | null =>
  fixedByPose?.map((fixed) => [...surfaces.slice(0, surfaces.length - fixed.length), ...fixed]) ?? null;
