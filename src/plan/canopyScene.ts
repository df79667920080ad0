/** A canopy and what stands around it as rays meet it: plain data, which can go to another thread. */
import type { Receiver, Surface } from '../geometry/surface.ts';
import { turnSurface } from '../geometry/turnSurface.ts';
import { add, distance, scale } from '../geometry/vec.ts';
import type { Canopy } from '../growth/canopy.ts';
import { canopySurfaces, nodeReceivers } from '../growth/scene.ts';
import { leafOptics } from '../light/leafOptics.ts';
import { poseCount, poseDeg } from '../light/sky/turns.ts';
import { type GroundZones, groundZones } from '../light/thrown/groundZones.ts';
import { type Patch, throwingPatches } from '../light/thrown/patches.ts';
import type { Ball } from '../light/thrown/thrownDirections.ts';
import type { PlanInput } from './input.ts';

export interface CanopyScene {
  /** Those of the canopy (`canopySurfaces`) first, then what is fixed. */
  readonly surfaces: readonly Surface[];
  /** The canopy's nodes, or those of them that are asked for. */
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
  /** Walls that throw light back; null where none is to, and for a pot that is turned, whose walls stay dark. */
  readonly throwing: Throwing | null;
  /** Ground whose shade counts for the light it throws back; null where there are no leaves. */
  readonly ground: GroundZones | null;
  readonly latitudeDeg: number;
  readonly seed: number;
}

export interface Throwing {
  readonly patches: readonly Patch[];
  /** Surfaces of the canopy. */
  readonly treeCount: number;
  /** Round all of its leaves. */
  readonly ball: Ball;
}

/** Leaves reach so far from their node, at most. */
const leafReachM = 0.45;

function throwingOf(canopy: Canopy, surfaces: readonly Surface[], fixedCount: number): Throwing | null {
  const points = canopy.nodes.map(({ point }) => point);
  if (points.length === 0) return null;
  const middle = scale(
    points.reduce((sum, point) => add(sum, point)),
    1 / points.length,
  );
  const patches = throwingPatches(surfaces, middle);
  if (patches.length === 0) return null;
  const radiusM = Math.max(...points.map((point) => distance(point, middle))) + leafReachM;
  return { patches, treeCount: surfaces.length - fixedCount, ball: { middle, radiusM } };
}

function receiversAt(canopy: Canopy, asked: readonly number[] | undefined): readonly Receiver[] {
  const all = nodeReceivers(canopy);
  return asked === undefined ? all : asked.map((node) => all[node] as Receiver);
}

/** @param asked nodes whose light is asked for; all when left out */
export function canopyScene(canopy: Canopy, input: PlanInput, asked?: readonly number[]): CanopyScene {
  const { values, fixed, site, seed, stance } = input;
  const { leaves, owners } = canopy;
  const surfaces = [...canopySurfaces(canopy, leafOptics(values)), ...fixed];
  return {
    surfaces,
    receivers: receiversAt(canopy, asked),
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
    throwing:
      site.wallsThrowLight === true && site.quarterTurns === undefined
        ? throwingOf(canopy, surfaces, fixed.length)
        : null,
    ground: groundZones(
      canopy.nodes.map(({ point }) => point),
      leafReachM,
    ),
    latitudeDeg: site.latitudeDeg,
    seed,
  };
}

/** All surfaces in each pose; null for a tree that stays. */
export const posesOf = ({ surfaces, fixedByPose }: CanopyScene): readonly (readonly Surface[])[] | null =>
  fixedByPose?.map((fixed) => [...surfaces.slice(0, surfaces.length - fixed.length), ...fixed]) ?? null;
