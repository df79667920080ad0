/** The canopy that is drawn: the tree as it was sketched, or the full leaf that the light is worked out for. */
import type { TreeFile } from '../../document/treeFile.ts';
import { planInputOf } from '../../engine/planInput.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { growCanopy } from '../../growth/growCanopy.ts';
import { fullLeafHeatGdd8 } from '../../plan/stages.ts';
import { seasonDates } from '../../season/seasonDates.ts';

type When = 'as sketched' | 'in full leaf';

/** Grown once a tree: the stage and the sheets ask for the same one, and sheets come and go. */
const grown: Readonly<Record<When, WeakMap<TreeFile, Canopy>>> = {
  'as sketched': new WeakMap(),
  'in full leaf': new WeakMap(),
};

/** Seed and heat are the engine's own, so that every leaf is drawn where its light was measured. */
export function drawnCanopy(file: TreeFile, when: When): Canopy {
  const known = grown[when].get(file);
  if (known !== undefined) return known;
  const canopy = grow(file, when);
  grown[when].set(file, canopy);
  return canopy;
}

function grow(file: TreeFile, when: When): Canopy {
  const input = planInputOf(file, {});
  const season = seasonDates({ ...input, site: input.site });
  const heatGdd8 =
    when === 'in full leaf' ? fullLeafHeatGdd8(input, season) : season.heat.sumAt(file.season.sketchedOn);
  const { tree, stance, values, seed } = input;
  return growCanopy({ tree, stance, values, heatGdd8, seed, gone: new Set() });
}
