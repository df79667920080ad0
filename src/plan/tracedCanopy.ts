/** A canopy with its light traced: what every question of the plan is asked of. */
import type { Canopy } from '../growth/canopy.ts';
import { type CutEnd, withCutEnds } from '../growth/cutEnds.ts';
import { growCanopy } from '../growth/growCanopy.ts';
import type { CellLight } from '../light/directions.ts';
import type { Ledger, Wave } from '../light/ledger.ts';
import { cellLight } from '../light/sky/cellLight.ts';
import type { SeasonDates } from '../season/seasonDates.ts';
import { canopyScene } from './canopyScene.ts';
import { fetchWave, type JobSteps } from './errand.ts';
import type { PlanInput } from './input.ts';
import { ripeChance } from './ripening.ts';
import { type CanopyWorth, canopyWorth } from './worth.ts';

export interface TracedCanopy {
  readonly canopy: Canopy;
  readonly worth: CanopyWorth;
  /** Receivers are the canopy's nodes, nothing else. */
  readonly ledger: Ledger;
}

/** The day the light is asked for; full leaf is the only one so far. */
export type LightStage = 'full leaf';

/** Heat sum at which the canopy is grown: full leaf, or the end of a season too short for it, GDD8. */
export function stageHeatGdd8(_stage: LightStage, input: PlanInput, season: SeasonDates): number {
  return Math.min(input.values.fullLeafHeatGdd8, season.heat.sumAt(season.ripeningEndsOn));
}

/** Light from leaf-out to the end of ripening, mean of a normal year. */
export function seasonLight(input: PlanInput, season: SeasonDates): CellLight {
  const { site } = input;
  const period = { from: season.leafOutOn, to: season.ripeningEndsOn };
  return cellLight({ site, groundReflectance: site.groundReflectance, period, skyKind: 'uniform' });
}

/**
 * Everything that stands on the tree today, grown as strong as if the ids in `notSharing` took no part of the
 * reserve; not traced yet.
 * @param ends of branches that may be shortened: they can be taken away
 */
export function untracedCanopy(
  input: PlanInput,
  season: SeasonDates,
  notSharing: ReadonlySet<string>,
  ends: readonly CutEnd[],
): TracedCanopy {
  const { tree, stance, values, seed } = input;
  const heatGdd8 = stageHeatGdd8('full leaf', input, season);
  const grown = growCanopy({ tree, stance, values, heatGdd8, seed, gone: new Set(), notSharing });
  const canopy = withCutEnds(grown, ends);
  const ledger = { ownerCount: canopy.owners.length, receiverCount: canopy.nodes.length, waves: [], seed };
  return { canopy, worth: canopyWorth(canopy, values, ripeChance(values, input.ripening, season)), ledger };
}

/**
 * The same canopy with so many waves of light in its ledger, at least; those it has are used again. The ledger holds
 * for this one light only. `done` runs from 0 to 1.
 */
export function* traceUpTo(
  waveCount: number,
  traced: TracedCanopy,
  input: PlanInput,
  light: CellLight,
): JobSteps<TracedCanopy> {
  const { canopy, ledger } = traced;
  const waves: Wave[] = [...ledger.waves];
  const had = waves.length;
  if (had >= waveCount) return traced;
  const scene = canopyScene(canopy, input);
  const tasks = Array.from(
    { length: waveCount - had },
    (_, i) => ({ at: 'nodes', scene, wave: had + i, onlyFor: light }) as const,
  );
  for (const [i, task] of tasks.entries()) {
    const part = { doing: 'Following the light', from: i / tasks.length, to: (i + 1) / tasks.length };
    waves.push(yield* fetchWave(task, tasks.slice(i + 1), part));
  }
  return { ...traced, ledger: { ...ledger, waves } };
}
