/** Film or net above the place: what it lets through, and when it hangs. */
import type { TreeFile } from '../../../../document/treeFile.ts';
import { changeLand } from '../../../../editor/edits/place.ts';
import { ChoiceField } from '../../../fields/ChoiceField.tsx';
import { DayField } from '../../../fields/DayField.tsx';
import { NumberField } from '../../../fields/NumberField.tsx';
import { quantities } from '../../../fields/quantities.ts';
import { TextField } from '../../../fields/TextField.tsx';
import { useFile, useWorkbench } from '../../../state/workbench.ts';
import { placeWords } from '../words.ts';
import { freshCovers } from './fresh.ts';

const words = placeWords.land;
type CoverFigures = NonNullable<TreeFile['site']['cover']>;
type Choice = keyof typeof words.coverChoices;

const choices = (isOwn: boolean): { value: Choice; text: string }[] =>
  (['none', 'film', 'net', ...(isOwn ? (['own'] as const) : [])] as const).map((value) => ({
    value,
    text: words.coverChoices[value],
  }));

export function Cover() {
  const { editor } = useWorkbench();
  const { cover } = useFile().site;
  const put = (next: CoverFigures | null) => editor.make((file) => changeLand(file, 'cover', next));
  return (
    <div className="form land-form">
      <div className="is-wide">
        <ChoiceField
          label={words.covered}
          value={cover === undefined ? 'none' : 'own'}
          options={choices(cover !== undefined)}
          onChoose={(choice) => {
            if (choice !== 'own') put(choice === 'none' ? null : freshCovers[choice]);
          }}
        />
      </div>
      {cover === undefined ? null : <CoverFields cover={cover} put={put} />}
    </div>
  );
}

interface CoverFieldsProps {
  readonly cover: CoverFigures;
  readonly put: (next: CoverFigures) => void;
}

function CoverFields({ cover, put }: CoverFieldsProps) {
  const { dates } = cover;
  return (
    <>
      <TextField
        label={placeWords.roundFields.name}
        value={cover.name}
        onCommit={(name) => put({ ...cover, name })}
      />
      <NumberField
        label={words.passed}
        value={cover.passedFraction}
        quantity={quantities.percent}
        onCommit={(passedFraction) => put({ ...cover, passedFraction })}
      />
      <NumberField
        label={words.diffusing}
        value={cover.diffusingFraction}
        quantity={quantities.percent}
        onCommit={(diffusingFraction) => put({ ...cover, diffusingFraction })}
      />
      <div className="is-wide">
        <ChoiceField
          label={words.hangs}
          value={dates === null ? 'always' : 'dates'}
          options={[
            { value: 'always', text: words.hanging.always },
            { value: 'dates', text: words.hanging.dates },
          ]}
          onChoose={(choice) => put({ ...cover, dates: choice === 'always' ? null : freshCovers.net.dates })}
        />
      </div>
      {dates === null ? null : (
        <>
          <DayField
            label={words.from}
            value={dates.from}
            onChoose={(from) => put({ ...cover, dates: { ...dates, from } })}
          />
          <DayField
            label={words.until}
            value={dates.until}
            onChoose={(until) => put({ ...cover, dates: { ...dates, until } })}
          />
        </>
      )}
    </>
  );
}
