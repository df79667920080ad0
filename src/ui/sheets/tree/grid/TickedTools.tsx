/** What can be done with all ticked branches at once. */
import type { Edit } from '../../../../editor/edit.ts';
import { estimateLeaves } from '../../../../editor/edits/leaves.ts';
import { type Mark, markMany, removeMany } from '../../../../editor/edits/many.ts';
import { useWorkbench } from '../../../state/workbench.ts';
import { conditionOptions, figOptions, pinOptions } from '../options.ts';
import { gridWords as words } from './words.ts';

export function TickedTools({ ticked }: { readonly ticked: readonly string[] }) {
  const { editor } = useWorkbench();
  const make = (edit: Edit) => void editor.make(edit);
  const mark = (as: Mark) => make((file) => markMany(file, ticked, as));
  return (
    <section className="ticked-tools" aria-label={words.withTicked(ticked.length)}>
      <h2 className="small-head">{words.withTicked(ticked.length)}</h2>
      <div className="button-row">
        <MarkAs
          head={words.heads.condition}
          options={conditionOptions}
          onChoose={(condition) => mark({ condition })}
        />
        <MarkAs
          head={words.heads.figs}
          options={figOptions}
          onChoose={(figs) => mark({ bearsFigs: figs === 'yes' })}
        />
        <MarkAs
          head={words.heads.pin}
          options={pinOptions}
          onChoose={(pin) => mark({ pin: pin === 'free' ? null : pin })}
        />
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

interface MarkAsProps<T extends string> {
  readonly head: string;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  readonly onChoose: (value: T) => void;
}

/** What is chosen is done at once, and the list stands open to the next. */
function MarkAs<T extends string>({ head, options, onChoose }: MarkAsProps<T>) {
  return (
    <select
      className="button"
      aria-label={`${words.markAs}, ${head}`}
      value=""
      onChange={(event) => {
        const found = options.find((one) => one.value === event.target.value);
        if (found !== undefined) onChoose(found.value);
      }}
    >
      <option value="" disabled hidden>
        {head}
      </option>
      {options.map(({ value, text }) => (
        <option key={value} value={value}>
          {text}
        </option>
      ))}
    </select>
  );
}
