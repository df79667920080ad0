/** Where the meaning of light changes for the open tree: the species' figures with the grower's settings put in. */
import type { TreeFile } from '../../document/treeFile.ts';
import { lightThresholds } from '../../engine/lightThresholds.ts';
import { figParameters, figValues } from '../../species/fig.ts';
import type { LightThresholds } from '../theme/lightScale.ts';

export function thresholdsOf(file: Pick<TreeFile, 'settings'>): LightThresholds {
  const { deepShade, fruitingLight, saturation } = lightThresholds(figValues(file.settings));
  return {
    deepShade: deepShade.share,
    fruitingLight: fruitingLight.share,
    // A file may give both limits the same figure; the scale needs room between them.
    saturation: Math.max(saturation.share, fruitingLight.share + leastGap),
  };
}

const leastGap = 0.01;

/** Where the thresholds come from, as shown to the grower. */
export const thresholdSources = {
  fruitingLight: figParameters.fruitHalfAtFraction.source,
  saturation: figParameters.fruitFullFromFraction.source,
} as const;
