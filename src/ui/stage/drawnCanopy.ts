/** The canopy that is drawn: the tree as it was sketched, or the full leaf that the light is worked out for. */
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf, treeOf } from '../../document/views.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { growCanopy } from '../../growth/growCanopy.ts';
import { seasonDates } from '../../season/seasonDates.ts';
import { figValues } from '../../species/fig.ts';

/** The engine's own seed, so that every leaf is drawn where its light was measured. */
const seed = 1;

export function drawnCanopy(file: TreeFile, when: 'as sketched' | 'in full leaf'): Canopy {
  const values = figValues(file.settings);
  const { site, season, cultivar } = file;
  const dates = seasonDates({ site, budBreakOn: season.budBreakOn, values, ripening: cultivar.ripening });
  const heatGdd8 = when === 'in full leaf' ? values.fullLeafHeatGdd8 : dates.heat.sumAt(season.sketchedOn);
  return growCanopy({ tree: treeOf(file), stance: stanceOf(file), values, heatGdd8, seed, gone: new Set() });
}
