/** The plan for the open tree, asked for anew whenever the tree or what is asked changes. */
import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { PlanAsked, PlanState } from '../../state/planWork.ts';
import { useFile, useView, useWorkbench } from '../../state/workbench.ts';

export interface ShownPlan extends PlanState {
  /** What is asked for now. */
  readonly wanted: PlanAsked;
  /** The plan shown is of an earlier tree, day or boldness. */
  readonly isStale: boolean;
  again(): void;
}

export function usePlan(): ShownPlan {
  const { plan: work } = useWorkbench();
  const file = useFile();
  const { workDate, boldness, wantsRenewal: renewal } = useView();
  const state = useStore(work.store);
  const date = workDate ?? file.season.sketchedOn;
  const again = () => work.make(file, { date, boldness, renewal });
  useEffect(() => {
    const { file: made, plan, asked, progress } = work.store.getState();
    const isOther =
      made !== file ||
      (asked !== null && (asked.date !== date || asked.boldness !== boldness || asked.renewal !== renewal));
    if (isOther || (plan === null && progress === null)) work.make(file, { date, boldness, renewal });
  }, [work, file, date, boldness, renewal]);
  const { plan, file: planned, asked } = state;
  const isStale = plan !== null && (planned !== file || asked?.date !== date || asked.boldness !== boldness);
  return { ...state, wanted: { date, boldness, renewal }, isStale, again };
}
