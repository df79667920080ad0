/** The figures of the thing that is picked. */
import type { Surrounding } from '../../../../document/treeFile.ts';
import { changeSurrounding } from '../../../../editor/edits/place.ts';
import { ChoiceField } from '../../../fields/ChoiceField.tsx';
import { NumberField } from '../../../fields/NumberField.tsx';
import { quantities } from '../../../fields/quantities.ts';
import { TextField } from '../../../fields/TextField.tsx';
import { useWorkbench } from '../../../state/workbench.ts';
import { placeWords as words } from '../words.ts';
import { freshRidgeM } from './fresh.ts';
import { roundNumbers } from './numbers.ts';

interface ThingFormProps {
  readonly thing: Surrounding;
  readonly index: number;
  readonly onTakenAway: () => void;
}

export function ThingForm({ thing, index, onTakenAway }: ThingFormProps) {
  const { editor } = useWorkbench();
  const put = (next: Surrounding | null) => void editor.make((file) => changeSurrounding(file, index, next));
  return (
    <div className="form picked-form" role="group" aria-label={thing.name}>
      <TextField
        label={words.roundFields.name}
        value={thing.name}
        onCommit={(name) => put({ ...thing, name })}
      />
      {roundNumbers(thing).map((number) => (
        <NumberField
          key={number.label}
          label={number.label}
          value={number.value}
          quantity={quantities[number.as]}
          onCommit={(value) => put(number.set(value))}
        />
      ))}
      {thing.kind === 'box' ? <Roof box={thing} onPut={put} /> : null}
      {thing.kind === 'fence' ? <p className="quiet small is-wide">{words.openHow}</p> : null}
      <div className="is-wide">
        <button
          type="button"
          className="button"
          onClick={() => {
            onTakenAway();
            put(null);
          }}
        >
          {words.takeAway(thing.name)}
        </button>
      </div>
    </div>
  );
}

type Box = Extract<Surrounding, { kind: 'box' }>;

function Roof({ box, onPut }: { readonly box: Box; readonly onPut: (box: Box) => void }) {
  const { ridgeHeightM: _, ...flat } = box;
  return (
    <ChoiceField
      label={words.roundFields.roof}
      value={box.ridgeHeightM === undefined ? 'flat' : 'ridge'}
      options={[
        { value: 'flat', text: words.roofs.flat },
        { value: 'ridge', text: words.roofs.ridge },
      ]}
      onChoose={(roof) => onPut(roof === 'flat' ? flat : { ...flat, ridgeHeightM: freshRidgeM(box.sizeM) })}
    />
  );
}
