/** The light of the tree over the time chosen on the Light sheet, finer once that time has been weighed. */
import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { LightAnswer } from '../../engine/engine.ts';
import { type ShownTime, weighedAt } from '../state/timeWork.ts';
import { useFile, useView, useWorkbench } from '../state/workbench.ts';

export interface ShownLight {
  /** Over the whole season; null before the first trace. */
  readonly season: LightAnswer | null;
  /** Null for the whole season. */
  readonly time: ShownTime | null;
  /** Of that time alone; null while it has not been weighed. */
  readonly weighed: LightAnswer | null;
  /** The figures are of the tree as it was before. */
  readonly isStale: boolean;
}

export function useShownLight(): ShownLight {
  const { light, times } = useWorkbench();
  const file = useFile();
  const { time } = useView();
  const { answer: season, file: litFile, progress } = useStore(light.store);
  const weighed = weighedAt(useStore(times.store), season, time);
  useEffect(() => {
    // While a trace is under way the rays of this answer are not yet kept.
    if (season === null || litFile === null || time === null || progress !== null) return;
    times.weigh(litFile, season, time);
  }, [times, season, litFile, time, progress]);
  return { season, time, weighed, isStale: season !== null && litFile !== file };
}
