/** The pencil that marks: what it goes over is marked when it is lifted. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Pencil } from '../../scene/stageModel.ts';
import { branchWood, sweepOver } from '../../scene/sweep.ts';
import { useView, useWorkbench } from '../../state/workbench.ts';
import { drawnCanopy } from '../drawnCanopy.ts';

/** How near to thin wood a stroke counts as over it, pixels. */
const reachPx = { touch: 14, mouse: 8, pen: 8 } as const;

export function useBrush(): Pencil | null {
  const { editor, eye, marks } = useWorkbench();
  const { hand, draftFrame } = useView();
  const isOn = useStore(marks.store, (state) => state.isOn);
  return useMemo(() => {
    if (hand !== 'draw' || draftFrame !== null || !isOn) return null;
    return {
      isAnywhere: false,
      begin: (_, at, pointerType) => {
        const { now } = eye.getState();
        if (now === null) return;
        const wood = branchWood(drawnCanopy(editor.file(), 'as sketched'));
        marks.begin(sweepOver(wood, now.project, now.pxPerM, reachPx[pointerType]), at);
      },
      to: marks.to,
      show: () => undefined,
      keep: marks.keep,
      drop: marks.drop,
    };
  }, [editor, eye, marks, hand, draftFrame, isOn]);
}
