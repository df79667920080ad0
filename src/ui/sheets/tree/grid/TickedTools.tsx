/** What can be done with all ticked branches at once. */
import type { Edit } from '../../../../editor/edit.ts';
import { estimateLeaves } from '../../../../editor/edits/leaves.ts';
import { markMany, removeMany } from '../../../../editor/edits/many.ts';
import { useWorkbench } from '../../../state/workbench.ts';
import { conditionOptions, pinOptions } from '../options.ts';
import { gridWords as words } from './words.ts';

export function TickedTools({ ticked }: { readonly ticked: readonly string[] }) {
  const { editor } = useWorkbench();
  const make = (edit: Edit) => void editor.make(edit);
  return (
    <section className="ticked-tools" aria-label={words.withTicked(ticked.length)}>
      <h2 className="small-head">{words.withTicked(ticked.length)}</h2>
      <div className="button-row">
        <select
          className="button"
          aria-label={`${words.markAs}, ${words.heads.condition}`}
          value=""
          onChange={(event) => {
            const found = conditionOptions.find((one) => one.value === event.target.value);
            if (found !== undefined) make((file) => markMany(file, ticked, { condition: found.value }));
          }}
        >
          <option value="" disabled hidden>
            {words.heads.condition}
          </option>
          {conditionOptions.map(({ value, text }) => (
            <option key={value} value={value}>
              {text}
            </option>
          ))}
        </select>
        <select
          className="button"
          aria-label={`${words.markAs}, ${words.heads.pin}`}
          value=""
          onChange={(event) => {
            const found = pinOptions.find((one) => one.value === event.target.value);
            if (found === undefined) return;
            const pin = found.value === 'free' ? null : found.value;
            make((file) => markMany(file, ticked, { pin }));
          }}
        >
          <option value="" disabled hidden>
            {words.heads.pin}
          </option>
          {pinOptions.map(({ value, text }) => (
            <option key={value} value={value}>
              {text}
            </option>
          ))}
        </select>
        <button
          type="button"
          className="button"
          onClick={() => make((file) => estimateLeaves(file, ticked, file.season.sketchedOn))}
        >
          {words.estimateTicked}
        </button>
        <button type="button" className="button" onClick={() => make((file) => removeMany(file, ticked))}>
          {words.removeTicked}
        </button>
      </div>
    </section>
  );
}
