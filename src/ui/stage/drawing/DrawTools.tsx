/** How the hand draws: settling on or off, and the selected branch drawn over. */
import { useStore } from 'zustand';
import { axisOf } from '../../../editor/edit.ts';
import { branchOf } from '../../../editor/selection.ts';
import { useFile, useSelected, useView, useWorkbench } from '../../state/workbench.ts';
import { MarkTools } from '../marking/MarkTools.tsx';
import { drawingWords as words } from './words.ts';

export function DrawTools() {
  const { draws, marks } = useWorkbench();
  const { hand, draftFrame } = useView();
  const file = useFile();
  const id = branchOf(file, useSelected());
  const { isAgain, snaps } = useStore(draws.store);
  const isMarking = useStore(marks.store, (state) => state.isOn);
  if (hand !== 'draw' || draftFrame !== null) return null;
  if (isMarking) {
    return (
      <fieldset className="draw-tools" aria-label={words.tools}>
        <MarkTools />
      </fieldset>
    );
  }
  const isArmed = isAgain && id !== null;
  return (
    <fieldset className="draw-tools" aria-label={words.tools}>
      {isArmed && <p className="draw-hint">{words.againHint(axisOf(file, id).name)}</p>}
      <button
        type="button"
        className="button"
        aria-pressed={snaps}
        title={words.snapHelp}
        onClick={() => draws.store.setState({ snaps: !snaps })}
      >
        {words.snap}
      </button>
      <button
        type="button"
        className="button"
        aria-pressed={isArmed}
        disabled={id === null}
        title={words.againHelp}
        onClick={() => draws.store.setState({ isAgain: !isArmed })}
      >
        {words.again}
      </button>
      <MarkTools />
    </fieldset>
  );
}
