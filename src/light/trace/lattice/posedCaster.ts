/** Rays on the leaves of a tree in a pot that is turned: each lattice meets what stands around the tree in one of its poses. */
import type { Surface } from '../../../geometry/surface.ts';
import type { PosedDirections } from '../posed.ts';
import type { LatticeCaster, MakeLatticeCaster } from './caster.ts';
import type { Lattice } from './lattice.ts';
import { makeLatticeScene } from './scene.ts';
import { fastestCaster } from './simdCaster.ts';

export interface PosedSurfaces {
  /** Surfaces in each pose: the same things in the same order, turned about the tree. */
  readonly poses: readonly (readonly Surface[])[];
  readonly group: Int32Array;
  readonly groupCount: number;
}

/** As `posedTracer`, for lattices across directions of `posed`. */
export const posedCaster =
  (
    { poses, group, groupCount }: PosedSurfaces,
    { poseOf }: PosedDirections,
    makeCaster: MakeLatticeCaster = fastestCaster,
  ): MakeLatticeCaster =>
  () => {
    const casters = poses.map((surfaces) => makeCaster(makeLatticeScene({ surfaces, group, groupCount })));
    const casterOf = ({ frame }: Lattice): LatticeCaster => casters[poseOf(frame.ahead)] as LatticeCaster;
    return {
      cast: (lattice) => casterOf(lattice).cast(lattice),
      collect: (sweep, firstRay, into) => {
        casterOf(sweep.lattice).collect(sweep, firstRay, into);
      },
    };
  };
