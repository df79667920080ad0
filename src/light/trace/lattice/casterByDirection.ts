/** Rays on leaves, each lattice with a scene of its own among several. */
import type { Surface } from '../../../geometry/surface.ts';
import type { SceneOf } from '../sceneByDirection.ts';
import type { LatticeCaster, MakeLatticeCaster } from './caster.ts';
import type { Lattice } from './lattice.ts';
import { makeLatticeScene } from './scene.ts';
import { fastestCaster } from './simdCaster.ts';

export interface LeafScenes {
  /** Leaves and wood come first in all of them, the same in each. No scene has more things than the first. */
  readonly scenes: readonly (readonly Surface[])[];
  /** Group of each surface of the first scene, -1 for what gathers no light. */
  readonly group: Int32Array;
  readonly groupCount: number;
}

/** As `tracerByDirection`, for lattices. */
export const casterByDirection =
  (
    { scenes, group, groupCount }: LeafScenes,
    sceneOf: SceneOf,
    makeCaster: MakeLatticeCaster = fastestCaster,
  ): MakeLatticeCaster =>
  () => {
    const casters = new Map<number, LatticeCaster>();
    const make = (surfaces: readonly Surface[]): LatticeCaster => {
      const own = Int32Array.from(surfaces, (_, i) => group[i] ?? -1);
      return makeCaster(makeLatticeScene({ surfaces, group: own, groupCount }));
    };
    const casterOf = ({ frame }: Lattice): LatticeCaster => {
      const number = sceneOf(frame.ahead);
      const caster = casters.get(number) ?? make(scenes[number] as readonly Surface[]);
      casters.set(number, caster);
      return caster;
    };
    return {
      cast: (lattice) => casterOf(lattice).cast(lattice),
      collect: (sweep, into) => {
        casterOf(sweep.lattice).collect(sweep, into);
      },
    };
  };
