/** What a canopy is worth: one function for the page, the search and the command. */
import type { Canopy } from '../growth/canopy.ts';
import type { KeepSet } from '../light/ledger.ts';
import type { FigValues } from '../species/fig.ts';
import { lightCurve } from './lightResponse.ts';
import type { CanopyWorth } from './worth.ts';

/** What a canopy is worth. */
export interface Score {
  /** Main crop figs expected to ripen this season. */
  readonly ripeFigs: number;
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
  readonly canopy: Canopy;
  readonly worth: CanopyWorth;
  /** Share of open sky per node of the canopy, over the season, with only the kept standing. */
  readonly nodeLight: ArrayLike<number>;
  readonly keep: KeepSet;
  readonly firstCropFigs: number;
  readonly values: FigValues;
}

/** Light of a shoot: mean over its nodes; null for a shoot without nodes. Entry per shoot of the canopy. */
export function shootLight(
  canopy: Canopy,
  worth: CanopyWorth,
  nodeLight: ArrayLike<number>,
): (number | null)[] {
  const sums = new Float64Array(canopy.shoots.length);
  const counts = new Int32Array(canopy.shoots.length);
  worth.shootOf.forEach((shoot, node) => {
    sums[shoot] = (sums[shoot] as number) + (nodeLight[node] as number);
    counts[shoot] = (counts[shoot] as number) + 1;
  });
  return canopy.shoots.map((_, i) => (counts[i] === 0 ? null : (sums[i] as number) / (counts[i] as number)));
}

export function scoreCanopy({ canopy, worth, nodeLight, keep, firstCropFigs, values }: ScoreInput): Score {
  if (nodeLight.length !== canopy.nodes.length) {
    throw new Error(`scoreCanopy: light is needed for ${canopy.nodes.length} nodes, got ${nodeLight.length}`);
  }
  const response = lightCurve(values);
  let ripeFigs = 0;
  let fruitingWoodM = 0;
  canopy.nodes.forEach(({ owner }, i) => {
    if (keep[owner] !== 1) return;
    const light = nodeLight[i] as number;
    ripeFigs += (worth.figs[i] as number) * response(light);
    if (light >= values.fruitHalfAtFraction) fruitingWoodM += worth.stretchM[i] as number;
  });
  const lights = shootLight(canopy, worth, nodeLight);
  const kept = canopy.shoots
    .map((shoot, i) => ({ shoot, light: lights[i] ?? null }))
    .filter(({ shoot }) => keep[shoot.owner] === 1);
  const lit = kept.map(({ light }) => light).filter((light) => light !== null);
  return {
    ripeFigs,
    firstCropFigs,
    fruitingWoodM,
    shootCount: kept.length,
    deepShadeCount: lit.filter((light) => light < values.fruitHalfAtFraction / 2).length,
    leafAreaM2: kept.reduce((sum, { shoot }) => sum + shoot.leafAreaM2, 0),
    meanLight: lit.length === 0 ? 0 : lit.reduce((sum, light) => sum + light, 0) / lit.length,
  };
}
