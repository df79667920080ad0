/** All that the grower marked to stay or to go, to be found and to be taken back. */
import { freeAll, type Part, pinPart, pinsOf } from '../../../editor/edits/pin.ts';
import { useFile, useUnits, useWorkbench } from '../../state/workbench.ts';
import { pinWords as words } from './pinWords.ts';

export function PinList() {
  const { editor } = useWorkbench();
  const pins = pinsOf(useFile());
  if (pins.length === 0) return null;
  return (
    <details>
      <summary>{words.count(pins.length)}</summary>
      <p className="small quiet">{words.meaning}</p>
      <ul className="pins">
        {pins.map((part) => (
          <PinRow key={part.id} part={part} />
        ))}
      </ul>
      <button type="button" className="button is-small" onClick={() => editor.make(freeAll)}>
        {words.freeAll}
      </button>
    </details>
  );
}

function PinRow({ part }: { readonly part: Part }) {
  const { editor, stage } = useWorkbench();
  const units = useUnits();
  const name = words.name(part, units);
  const find = () => {
    editor.select(part.id);
    stage.current?.showOwner(part.id);
  };
  return (
    <li className="pin-row">
      <span>
        <strong>{words.said(part)}</strong> {name}
      </span>
      <span className="button-row">
        <button type="button" className="button is-small" onClick={find}>
          {words.show}
          <span className="unseen"> {name}</span>
        </button>
        <button
          type="button"
          className="button is-small"
          onClick={() => editor.make((file) => pinPart(file, part.id, null))}
        >
          {words.free}
          <span className="unseen">: {name}</span>
        </button>
      </span>
    </li>
  );
}
