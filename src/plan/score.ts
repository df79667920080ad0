/** What a canopy is worth: one function for the page, the search and the command. */
import type { Canopy } from '../growth/canopy.ts';
import type { KeepSet } from '../light/ledger.ts';
import type { FigValues } from '../species/fig.ts';
import type { Crop } from './crop.ts';
import type { NodePlaces } from './nodePlaces.ts';

/** What a canopy is worth. */
export interface Score {
  /** Main crop figs expected to ripen this season. */
  readonly ripeFigs: number;
  /** Main crop figs set; more than ripen where the season is short, or the pot small. */
  readonly figsSet: number;
  /** First-crop (last year's wood) figs expected. */
  readonly firstCropFigs: number;
  /** Shoot length whose light reaches fruiting light, metres. */
  readonly fruitingWoodM: number;
  readonly shootCount: number;
  /** Shoots below half of fruiting light. */
  readonly deepShadeCount: number;
  readonly leafAreaM2: number;
  /** Mean over shoots of their share of open sky. */
  readonly meanLight: number;
}

export interface ScoreInput {
  /** At full leaf. */
  readonly canopy: Canopy;
  readonly places: NodePlaces;
  /** Share of open sky per node of the canopy, over the season, with only the kept standing. */
  readonly nodeLight: ArrayLike<number>;
  readonly keep: KeepSet;
  readonly crop: Crop;
  readonly firstCropFigs: number;
  readonly values: FigValues;
}

/** Light of a shoot: mean over its nodes; null for a shoot without nodes. Entry per shoot of the canopy. */
export function shootLight(
  canopy: Canopy,
  places: NodePlaces,
  nodeLight: ArrayLike<number>,
): (number | null)[] {
  const sums = new Float64Array(canopy.shoots.length);
  const counts = new Int32Array(canopy.shoots.length);
  places.shootOf.forEach((shoot, node) => {
    sums[shoot] = (sums[shoot] as number) + (nodeLight[node] as number);
    counts[shoot] = (counts[shoot] as number) + 1;
  });
  return canopy.shoots.map((_, i) => (counts[i] === 0 ? null : (sums[i] as number) / (counts[i] as number)));
}

export function scoreCanopy(input: ScoreInput): Score {
  const { canopy, places, nodeLight, keep, crop, firstCropFigs, values } = input;
  if (nodeLight.length !== canopy.nodes.length) {
    throw new Error(`scoreCanopy: light is needed for ${canopy.nodes.length} nodes, got ${nodeLight.length}`);
  }
  let fruitingWoodM = 0;
  canopy.nodes.forEach(({ owner }, i) => {
    if (keep[owner] !== 1) return;
    if ((nodeLight[i] as number) >= values.fruitHalfAtFraction) fruitingWoodM += places.stretchM[i] as number;
  });
  const lights = shootLight(canopy, places, nodeLight);
  const kept = canopy.shoots
    .map((shoot, i) => ({ shoot, light: lights[i] ?? null }))
    .filter(({ shoot }) => keep[shoot.owner] === 1);
  const lit = kept.map(({ light }) => light).filter((light) => light !== null);
  return {
    ripeFigs: crop.ripe,
    figsSet: crop.set,
    firstCropFigs,
    fruitingWoodM,
    shootCount: kept.length,
    deepShadeCount: lit.filter((light) => light < values.fruitHalfAtFraction / 2).length,
    leafAreaM2: kept.reduce((sum, { shoot }) => sum + shoot.leafAreaM2, 0),
    meanLight: lit.length === 0 ? 0 : lit.reduce((sum, light) => sum + light, 0) / lit.length,
  };
}
