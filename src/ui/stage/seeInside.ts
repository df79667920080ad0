/** How one sees into the crown: as the stage is told, and as the legend tells it. */
import { useMemo } from 'react';
import type { SeeInside } from '../scene/stageModel.ts';
import { thresholdsOf } from '../state/thresholds.ts';
import { useShownFile, useUnits, useView } from '../state/workbench.ts';
import { insideWords as words } from './insideWords.ts';

export function useSeeInside(): SeeInside {
  const { settings } = useShownFile();
  const { looks } = useView();
  return useMemo(() => {
    const { findsShade, isCutAway, heightsM } = looks;
    const fadeFrom = findsShade ? thresholdsOf({ settings }).fruitingLight : null;
    return { fadeFrom, isCutAway, heightsM };
  }, [looks, settings]);
}

/** One sentence for each way in which leaves are hidden. */
export function useInsideSaid(): readonly string[] {
  const { fadeFrom, isCutAway, heightsM } = useSeeInside();
  const units = useUnits();
  return [
    ...(fadeFrom === null ? [] : [words.saidFaint(fadeFrom)]),
    ...(isCutAway ? [words.saidCutAway] : []),
    ...(heightsM === null
      ? []
      : [words.saidHeights(words.height(heightsM[0], units), words.height(heightsM[1], units))]),
  ];
}

/** Heights between two ends of a slider; null where they leave nothing out. The lower end pushes the upper, and the other way round. */
export function heightsBetween(
  moved: 'from' | 'to',
  [fromM, toM]: readonly [number, number],
  topM: number,
): SeeInside['heightsM'] {
  const [from, to] = moved === 'from' ? [fromM, Math.max(fromM, toM)] : [Math.min(fromM, toM), toM];
  return from <= 0 && to >= topM ? null : [from, to];
}
