/** Where the meaning of light changes for a tree. */
import { type FigValues, figParameters } from '../species/fig.ts';
import type { LightThresholds, Threshold } from './reports.ts';

/** @param values the species' figures with the grower's settings put in */
export function lightThresholds(values: FigValues): LightThresholds {
  const threshold = (name: 'fruitHalfAtFraction' | 'fruitFullFromFraction'): Threshold => ({
    share: values[name],
    source: figParameters[name].source,
    isSet: values[name] !== figParameters[name].value,
  });
  const fruitingLight = threshold('fruitHalfAtFraction');
  return {
    deepShade: {
      share: fruitingLight.share / 2,
      source: 'half of fruiting light, by our choice of words',
      isSet: fruitingLight.isSet,
    },
    fruitingLight,
    saturation: threshold('fruitFullFromFraction'),
  };
}
