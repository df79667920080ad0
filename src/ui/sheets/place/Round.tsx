/** Walls and neighbours as a short list of numbers. */
import type { Surrounding } from '../../../document/treeFile.ts';
import { changeSurrounding } from '../../../editor/edits/place.ts';
import { NumberField } from '../../fields/NumberField.tsx';
import { quantities } from '../../fields/quantities.ts';
import { TextField } from '../../fields/TextField.tsx';
import { useFile, useWorkbench } from '../../state/workbench.ts';
import { fresh, type RoundNumber, roundNumbers } from './roundNumbers.ts';
import { placeWords as words } from './words.ts';

export function Round() {
  const { editor } = useWorkbench();
  const { surroundings } = useFile().site;
  return (
    <section>
      <h2 className="small-head">{words.round}</h2>
      {surroundings.length === 0 ? (
        <p>{words.noneRound}</p>
      ) : (
        <p className="quiet small">{words.positions}</p>
      )}
      {surroundings.map((one, index) => (
        // Walls have no ids; their place in the list is what they are.
        <Item key={`${index}-${one.kind}`} one={one} index={index} />
      ))}
      <div className="button-row">
        {(['wall', 'fence', 'hedge', 'box', 'crown'] as const).map((kind) => (
          <button
            key={kind}
            type="button"
            className="button"
            onClick={() => editor.make((file) => changeSurrounding(file, surroundings.length, fresh(kind)))}
          >
            {words.addKind[kind]}
          </button>
        ))}
      </div>
    </section>
  );
}

function Item({ one, index }: { readonly one: Surrounding; readonly index: number }) {
  const { editor } = useWorkbench();
  const put = (next: Surrounding | null) => void editor.make((file) => changeSurrounding(file, index, next));
  return (
    <details className="round">
      <summary>
        {one.name} <span className="quiet small">{words.kinds[one.kind]}</span>
      </summary>
      <div className="form">
        <TextField
          label={words.roundFields.name}
          value={one.name}
          onCommit={(name) => put({ ...one, name })}
        />
        {roundNumbers(one).map((number: RoundNumber) => (
          <NumberField
            key={number.label}
            label={number.label}
            value={number.value}
            quantity={quantities[number.as]}
            onCommit={(value) => put(number.set(value))}
          />
        ))}
        <div className="is-wide">
          <button type="button" className="button" onClick={() => put(null)}>
            {words.takeAway(one.name)}
          </button>
        </div>
      </div>
    </details>
  );
}
