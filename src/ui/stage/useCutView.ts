/** The cuts as the stage shows them: what goes, where each is made, and what the grower marked to stay. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { pinsOf, sameButPins } from '../../editor/edits/pin.ts';
import type { Canopy } from '../../growth/canopy.ts';
import type { CutMark } from '../scene/stageModel.ts';
import { numbered } from '../sheets/work/groups.ts';
import { pinWords } from '../sheets/work/pinWords.ts';
import { useFile, usePreferences, useSelected, useWorkbench } from '../state/workbench.ts';
import { placeMarks } from './placeMarks.ts';

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
  const isShown = sheet === 'work' && plan !== null && plannedFile !== null;
  return useMemo(() => {
    // While a new list is made after a mark, the cuts of the old one stay in sight: they are of the same wood.
    if (!isShown || !sameButPins(plannedFile, file)) return nothing;
    const cuts = numbered(plan).map(({ cut, n }) => ({ ...cut, text: `${n}` }));
    const going = cuts.filter(({ id, kind, atM }) => ticked.has(id) && (kind === 'rub off bud' || atM === 0));
    const stays = pinsOf(file)
      .filter(({ pin }) => pin === 'keep')
      .map(({ id }) => ({ id, kind: 'keep', target: id, atM: 0, text: pinWords.onStage }) as const);
    const marks = placeMarks(file, canopy, [...cuts, ...stays]).map(
      ({ mark, ...place }): CutMark => ({
        ...place,
        active: mark.kind === 'keep' || ticked.has(mark.id),
        isSelected: mark.target === selectedId,
      }),
    );
    return { gone: new Set(going.map((cut) => cut.target)), marks };
  }, [isShown, plan, plannedFile, ticked, canopy, file, selectedId]);
}
