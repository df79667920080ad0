/** The canopy that is drawn: the tree as it was sketched, or the full leaf that the light is worked out for. */
import type { TreeFile } from '../../document/treeFile.ts';
import { planInputOf } from '../../engine/planInput.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { growCanopy } from '../../growth/growCanopy.ts';
import { stageHeatGdd8 } from '../../plan/tracedCanopy.ts';
import { seasonDates } from '../../season/seasonDates.ts';

/** Seed and heat are the engine's own, so that every leaf is drawn where its light was measured. */
export function drawnCanopy(file: TreeFile, when: 'as sketched' | 'in full leaf'): Canopy {
  const input = planInputOf(file, {});
  const season = seasonDates({ ...input, site: input.site });
  const heatGdd8 =
    when === 'in full leaf'
      ? stageHeatGdd8('full leaf', input, season)
      : season.heat.sumAt(file.season.sketchedOn);
  const { tree, stance, values, seed } = input;
  return growCanopy({ tree, stance, values, heatGdd8, seed, gone: new Set() });
}
