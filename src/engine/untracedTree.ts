import type { Canopy } from '../growth/canopy.ts';
import type { CanopyScene } from '../plan/canopyScene.ts';
import type { PlanInput } from '../plan/input.ts';
import type { SeasonDates } from '../season/seasonDates.ts';

/** A tree in its summer leaves, and all that its rays depend on. */
export interface UntracedTree {
  /** Everything the rays depend on, as text: the same for trees that are traced alike. */
  readonly key: string;
  readonly input: PlanInput;
  readonly season: SeasonDates;
  readonly canopy: Canopy;
  readonly scene: CanopyScene;
}
