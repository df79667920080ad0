/** The scale of light for the tree that is drawn: in bright sun one colour a class, as fine differences are not seen there. */
import { useMemo } from 'react';
import { thresholdsOf } from '../state/thresholds.ts';
import { usePreferences, useShownFile } from '../state/workbench.ts';
import { type LightScale, makeLightScale } from '../theme/lightScale.ts';

export function useLightScale(): LightScale {
  const { settings } = useShownFile();
  const { theme } = usePreferences();
  return useMemo(
    () => makeLightScale(thresholdsOf({ settings }), theme === 'outdoors' ? 'classes' : 'smooth'),
    [settings, theme],
  );
}
