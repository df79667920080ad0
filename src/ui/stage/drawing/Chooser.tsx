/** Where several thin branches lie under a finger: the one that was taken, and those it may have meant. */
import { useStore } from 'zustand';
import type { TreeFile } from '../../../document/treeFile.ts';
import { axisOf } from '../../../editor/edit.ts';
import { branchOf, isThere } from '../../../editor/selection.ts';
import type { Doubt, StageEye } from '../../scene/stageModel.ts';
import { useFile, useSelected, useView, useWorkbench } from '../../state/workbench.ts';
import { drawingWords as words } from './words.ts';

/** A row, and how far the list stands from the finger, pixels. */
const [rowPx, besidePx, widthPx, edgePx] = [44, 34, 224, 8];
/** No more are seen at once, so that the tree is; half a row says that there are more. */
const mostRows = 4.5;

export function Chooser() {
  const { editor, eye, view } = useWorkbench();
  const { doubt } = useView();
  const file = useFile();
  const selectedId = useSelected();
  const now = useStore(eye, (state) => state.now);
  const ids = doubt?.among.filter((id) => isThere(file, id)) ?? [];
  if (doubt === null || now === null || ids.length === 0) return null;
  // Something else was selected since, or nothing.
  if (selectedId !== doubt.taken) return null;
  const close = (): void => view.setState({ doubt: null });
  return (
    <fieldset className="chooser" aria-label={words.chooser} style={placeOf(doubt, now, ids.length + 1)}>
      {ids.map((id) => (
        <button
          key={id}
          type="button"
          className="chooser-row"
          aria-pressed={id === selectedId}
          onClick={() => {
            editor.select(id);
            close();
          }}
        >
          {nameOf(file, id)}
        </button>
      ))}
      <button type="button" className="chooser-row" onClick={close}>
        {words.close}
      </button>
    </fieldset>
  );
}

function nameOf(file: TreeFile, id: string): string {
  const branch = branchOf(file, id) ?? id;
  const { name } = axisOf(file, branch);
  return branch === id ? name : words.budOn(name);
}

/** Beside the finger, on the side that has room. */
function placeOf({ at: [x, y] }: Doubt, { size }: StageEye, rows: number) {
  const heightPx = Math.min(Math.min(rows, mostRows) * rowPx, size.height - 2 * edgePx);
  const left = x < size.width / 2 ? x + besidePx : x - besidePx - widthPx;
  const top = y - heightPx / 2;
  return {
    width: widthPx,
    maxHeight: heightPx,
    left: Math.max(edgePx, Math.min(size.width - widthPx - edgePx, left)),
    top: Math.max(edgePx, Math.min(size.height - heightPx - edgePx, top)),
  };
}
