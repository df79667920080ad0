/** The light of the tree that is drawn over the time chosen on the Light sheet, finer once that time has been weighed. */
import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { LightAnswer } from '../../engine/engine.ts';
import { type ShownTime, weighedAt } from '../state/timeWork.ts';
import { useShownFile, useView, useWorkbench } from '../state/workbench.ts';

export interface ShownLight {
  /** Over the whole season; null before the first trace of this tree: what was told of another tree says nothing of it. */
  readonly season: LightAnswer | null;
  /** Null for the whole season. */
  readonly time: ShownTime | null;
  /** Of that time alone; null while it has not been weighed. */
  readonly weighed: LightAnswer | null;
  /** The figures are of the tree as it was before, or as it was pulled a moment ago. */
  readonly isStale: boolean;
}

export function useShownLight(): ShownLight {
  const { light, times } = useWorkbench();
  const file = useShownFile();
  const { time } = useView();
  const { answer, file: litFile, progress } = useStore(light.store);
  const season = litFile?.id === file.id ? answer : null;
  const weighed = weighedAt(useStore(times.store), season, time);
  useEffect(() => {
    // While a trace is under way the rays of this answer are not yet kept.
    if (season === null || litFile === null || time === null || progress !== null) return;
    times.weigh(litFile, season, time);
  }, [times, season, litFile, time, progress]);
  return { season, time, weighed, isStale: season !== null && litFile !== file };
}
