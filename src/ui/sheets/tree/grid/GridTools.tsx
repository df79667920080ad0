/** The buttons of the table with their keys, and what its other keys do. */
import type { BranchGridState } from './useBranchGrid.ts';
import { gridWords as words } from './words.ts';

export function GridTools({ grid }: { readonly grid: BranchGridState }) {
  const { acts, ticked } = grid;
  return (
    <>
      <div className="button-row">
        <KeyButton text={words.add} keyName="Insert" onPress={acts.add} />
        <KeyButton text={words.remove} keyName="Delete" onPress={acts.remove} />
        <button type="button" className="button" onClick={() => void grid.copy()}>
          {words.copy(ticked.length)}
        </button>
        <label className="tick">
          <input
            type="checkbox"
            checked={grid.withBuds}
            onChange={(event) => grid.setWithBuds(event.target.checked)}
          />
          {words.showBuds}
        </label>
      </div>
      <ul className="quiet small key-list" id="grid-hint">
        {words.keys.map(([key, what]) => (
          <li key={key}>
            <kbd>{key}</kbd> {what}
          </li>
        ))}
      </ul>
    </>
  );
}

interface KeyButtonProps {
  readonly text: string;
  /** Heard as a shortcut, seen beside the words. */
  readonly keyName: string;
  readonly onPress: () => void;
}

function KeyButton({ text, keyName, onPress }: KeyButtonProps) {
  return (
    <button type="button" className="button" aria-keyshortcuts={keyName} onClick={onPress}>
      {text} <kbd aria-hidden="true">{keyName}</kbd>
    </button>
  );
}
