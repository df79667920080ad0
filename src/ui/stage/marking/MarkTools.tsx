/** Whether strokes mark, and as what. */
import { useStore } from 'zustand';
import { type BrushMark, brushMarks } from '../../../editor/edits/brush.ts';
import { useWorkbench } from '../../state/workbench.ts';
import { markingWords as words } from './words.ts';

const names = Object.keys(brushMarks) as BrushMark[];

export function MarkTools() {
  const { marks } = useWorkbench();
  const { isOn, as } = useStore(marks.store);
  return (
    <>
      {isOn ? (
        <select
          className="button mark-as"
          aria-label={words.as}
          value={as}
          onChange={(event) => marks.store.setState({ as: event.target.value as BrushMark })}
        >
          {names.map((name) => (
            <option key={name} value={name}>
              {words.marks[name]}
            </option>
          ))}
        </select>
      ) : null}
      <button
        type="button"
        className="button"
        aria-pressed={isOn}
        title={words.markHelp}
        onClick={() => marks.store.setState({ isOn: !isOn })}
      >
        {words.mark}
      </button>
    </>
  );
}
