/** The cuts as the stage shows them: what goes, and where each is made. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Canopy } from '../../growth/canopy.ts';
import { budMark, cutMark } from '../scene/cutMark.ts';
import { dormantBuds } from '../scene/dormantBuds.ts';
import type { CutMark } from '../scene/stageModel.ts';
import { useFile, usePreferences, useSelected, useWorkbench } from '../state/workbench.ts';

const nothing: { readonly gone: ReadonlySet<string>; readonly marks: readonly CutMark[] } = {
  gone: new Set(),
  marks: [],
};

export function useCutView(canopy: Canopy): typeof nothing {
  const { plan: planWork } = useWorkbench();
  const { plan, ticked, file: plannedFile } = useStore(planWork.store);
  const file = useFile();
  const { sheet } = usePreferences();
  const selectedId = useSelected();
  const isShown = sheet === 'work' && plan !== null && plannedFile === file;
  return useMemo(() => {
    if (!isShown) return nothing;
    const going = plan.cuts.filter(
      (cut) => ticked.has(cut.id) && (cut.kind === 'rub off bud' || cut.atM === 0),
    );
    const buds = new Map(dormantBuds(file, canopy).map((bud) => [bud.id, bud]));
    const marks = plan.cuts.flatMap((cut, i): CutMark[] => {
      const bud = buds.get(cut.target);
      const place = bud === undefined ? cutMark(canopy, cut, i + 1) : budMark(bud, cut, i + 1);
      if (place === null) return [];
      return [{ ...place, active: ticked.has(cut.id), isSelected: cut.target === selectedId }];
    });
    return { gone: new Set(going.map((cut) => cut.target)), marks };
  }, [isShown, plan, ticked, canopy, file, selectedId]);
}
