/** The sample trees as grown canopies, ready to be traced. */

import { planInputOf } from '../../../src/engine/planInput.ts';
import type { Receiver, Surface } from '../../../src/geometry/surface.ts';
import type { Canopy } from '../../../src/growth/canopy.ts';
import { growCanopy } from '../../../src/growth/growCanopy.ts';
import { canopyReceivers, canopySurfaces } from '../../../src/growth/scene.ts';
import { leafOptics } from '../../../src/light/leafOptics.ts';
import type { PlanInput } from '../../../src/plan/input.ts';
import { fullLeafHeatGdd8 } from '../../../src/plan/stages.ts';
import { type SeasonDates, seasonDates } from '../../../src/season/seasonDates.ts';
import { type SampleId, sampleFile } from '../../document/sampleFiles.ts';

export interface RealCanopy {
  readonly canopy: Canopy;
  readonly surfaces: readonly Surface[];
  /** First the nodes, then a point on each leaf. */
  readonly receivers: readonly Receiver[];
  readonly input: PlanInput;
  readonly season: SeasonDates;
}

/** A sample at full leaf, with its pot, walls and neighbours. */
export function realCanopy(id: SampleId): RealCanopy {
  const input = planInputOf(sampleFile(id), {});
  const season = seasonDates(input);
  const { tree, stance, values, seed } = input;
  const heatGdd8 = fullLeafHeatGdd8(input, season);
  const canopy = growCanopy({ tree, stance, values, heatGdd8, seed, gone: new Set() });
  const surfaces = [...canopySurfaces(canopy, leafOptics(values)), ...input.fixed];
  return { canopy, surfaces, receivers: canopyReceivers(canopy, { seed, wave: 0 }), input, season };
}
