/** The cuts as the stage shows them: what goes, and where each is made. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Canopy } from '../../growth/canopy.ts';
import { cutMark } from '../scene/cutMark.ts';
import type { CutMark } from '../scene/stageModel.ts';
import { useFile, usePreferences, useWorkbench } from '../state/workbench.ts';

const nothing: { readonly gone: ReadonlySet<string>; readonly marks: readonly CutMark[] } = {
  gone: new Set(),
  marks: [],
};

export function useCutView(canopy: Canopy): typeof nothing {
  const { plan: planWork } = useWorkbench();
  const { plan, ticked, file: plannedFile } = useStore(planWork.store);
  const file = useFile();
  const { sheet } = usePreferences();
  const isShown = sheet === 'work' && plan !== null && plannedFile === file;
  return useMemo(() => {
    if (!isShown) return nothing;
    const going = plan.cuts.filter(
      (cut) => ticked.has(cut.id) && (cut.kind === 'rub off bud' || cut.atM === 0),
    );
    const marks = plan.cuts.map((cut, i) => cutMark(canopy, cut, i + 1, ticked.has(cut.id)));
    return {
      gone: new Set(going.map((cut) => cut.target)),
      marks: marks.filter((mark) => mark !== null),
    };
  }, [isShown, plan, ticked, canopy]);
}
