/** When it freezes, or that it does not. */
import type { TreeFile } from '../../../document/treeFile.ts';
import { changeFrost } from '../../../editor/edits/climate.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { DayField } from '../../fields/DayField.tsx';
import { useFile, useWorkbench } from '../../state/workbench.ts';
import { placeWords as words } from './words.ts';

type Dates = NonNullable<TreeFile['site']['frost']>;

/** A start for the grower's own dates, of a mild inland place. Our choice. */
const north: Dates = { lastOfSpring: '04-20', firstOfAutumn: '10-25' };
const south: Dates = { lastOfSpring: '10-20', firstOfAutumn: '04-25' };

export function Frost() {
  const { editor } = useWorkbench();
  const { frost, latitudeDeg } = useFile().site;
  const put = (next: Dates | null) => void editor.make((file) => changeFrost(file, next));
  return (
    <div className="form">
      <ChoiceField
        label={words.frostAsked}
        value={frost === null ? 'never' : 'normal'}
        options={[
          { value: 'normal', text: words.frostChoices.normal },
          { value: 'never', text: words.frostChoices.never },
        ]}
        onChoose={(choice) => put(choice === 'never' ? null : latitudeDeg < 0 ? south : north)}
      />
      {frost === null ? null : (
        <>
          <DayField
            label={words.lastFrost}
            value={frost.lastOfSpring}
            onChoose={(lastOfSpring) => put({ ...frost, lastOfSpring })}
          />
          <DayField
            label={words.firstFrost}
            value={frost.firstOfAutumn}
            onChoose={(firstOfAutumn) => put({ ...frost, firstOfAutumn })}
          />
        </>
      )}
    </div>
  );
}
