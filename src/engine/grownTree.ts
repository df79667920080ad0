/** The tree of a file in its summer leaves, ready to be traced. */
import type { TreeFile } from '../document/treeFile.ts';
import type { Surface } from '../geometry/surface.ts';
import type { Canopy } from '../growth/canopy.ts';
import { growCanopy } from '../growth/growCanopy.ts';
import { canopySurfaces } from '../growth/scene.ts';
import { leafOptics } from '../light/leafOptics.ts';
import type { PlanInput } from '../plan/input.ts';
import { fullLeafHeatGdd8 } from '../plan/stages.ts';
import { type SeasonDates, seasonDates } from '../season/seasonDates.ts';
import type { PlanOptions } from './engine.ts';
import { planInputOf } from './planInput.ts';

/** A tree with the dates of its season. */
export interface SeasonedTree {
  readonly input: PlanInput;
  readonly season: SeasonDates;
}

export interface GrownTree extends SeasonedTree {
  readonly canopy: Canopy;
  /** Leaves in the order of the canopy, then its wood, then what is fixed. */
  readonly surfaces: readonly Surface[];
}

export function seasonedTree(file: TreeFile, options: PlanOptions): SeasonedTree {
  const input = planInputOf(file, options);
  return { input, season: seasonDates({ ...input, site: input.site }) };
}

export function grown({ input, season }: SeasonedTree): GrownTree {
  const { tree, stance, values, leafSeed: seed } = input;
  const heatGdd8 = fullLeafHeatGdd8(input, season);
  const canopy = growCanopy({ tree, stance, values, heatGdd8, seed, gone: new Set() });
  return { input, season, canopy, surfaces: [...canopySurfaces(canopy, leafOptics(values)), ...input.fixed] };
}

export const grownTree = (file: TreeFile, options: PlanOptions): GrownTree =>
  grown(seasonedTree(file, options));
