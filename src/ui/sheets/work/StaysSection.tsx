/** The shoots that stay when the ticked cuts are made, each with its light, to be marked. */
import { partOf } from '../../../editor/edits/pin.ts';
import type { Trial } from '../../../engine/engine.ts';
import { useFile, useSelected, useUnits, useWorkbench } from '../../state/workbench.ts';
import { PinButtons } from './PinButtons.tsx';
import { pinWords } from './pinWords.ts';
import { seasonWords as words } from './seasonWords.ts';

export function StaysSection({ trial }: { readonly trial: Trial | null }) {
  if (trial === null || trial.shoots.length === 0) return null;
  return (
    <details>
      <summary>{words.stays(trial.shoots.length)}</summary>
      <p className="small quiet">{words.staysMeaning}</p>
      <ul className="stays">
        {trial.shoots.map((shoot) => (
          <Stay key={shoot.id} shoot={shoot} />
        ))}
      </ul>
    </details>
  );
}

function Stay({ shoot: { id, lightFraction } }: { readonly shoot: Trial['shoots'][number] }) {
  const { editor } = useWorkbench();
  const units = useUnits();
  const part = partOf(useFile(), id);
  const isOpen = useSelected() === id;
  if (part === null) return null;
  return (
    <li className={isOpen ? 'stay is-selected' : 'stay'}>
      <button
        type="button"
        className="row-button"
        aria-expanded={isOpen}
        onClick={() => editor.select(isOpen ? null : id)}
      >
        <span>{pinWords.name(part, units)}</span>
        <span className="figure">{words.staysLight(lightFraction)}</span>
      </button>
      {isOpen ? (
        <span className="button-row">
          <PinButtons id={id} />
        </span>
      ) : null}
    </li>
  );
}
