/** What a stroke on the stage does to the open tree, while the hand draws. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { branchOf } from '../../../editor/selection.ts';
import type { Pencil } from '../../scene/stageModel.ts';
import { useSelected, useView, useWorkbench } from '../../state/workbench.ts';

/** How near the tip must come to settle on something, pixels. */
const snapPx = { touch: 24, mouse: 8, pen: 8 } as const;

export function usePencil(): Pencil | null {
  const { editor, eye, view, draws } = useWorkbench();
  const { hand, draftFrame } = useView();
  const selectedId = useSelected();
  const isAgain = useStore(draws.store, (state) => state.isAgain);
  return useMemo(() => {
    if (hand !== 'draw' || draftFrame !== null) return null;
    return {
      isAnywhere: isAgain && selectedId !== null,
      begin: (id, at, pointerType) => {
        const { now } = eye.getState();
        const branch = branchOf(editor.file(), isAgain ? selectedId : id);
        view.setState({ doubt: null });
        if (now !== null && branch !== null) draws.begin(branch, now, at, snapPx[pointerType]);
      },
      to: draws.to,
      show: draws.show,
      keep: draws.keep,
      drop: draws.drop,
    };
  }, [editor, eye, view, draws, hand, draftFrame, selectedId, isAgain]);
}
