/** The clock of the place, from the list that the device knows. */
import { changeSite } from '../../../editor/edits/place.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { useFile, useWorkbench } from '../../state/workbench.ts';
import { placeWords as words } from './words.ts';

const zones = Intl.supportedValuesOf('timeZone');
const zoneHere = new Intl.DateTimeFormat().resolvedOptions().timeZone;

export function ZoneField() {
  const { editor } = useWorkbench();
  const { timeZone } = useFile().site;
  const known = zones.includes(timeZone) ? zones : [timeZone, ...zones];
  const put = (zone: string) => void editor.make((file) => changeSite(file, { timeZone: zone }));
  return (
    <>
      <ChoiceField
        label={words.zone}
        value={timeZone}
        options={known.map((zone) => ({ value: zone, text: zone.replaceAll('_', ' ') }))}
        onChoose={put}
      />
      {timeZone === zoneHere ? null : (
        <button type="button" className="button is-small is-wide" onClick={() => put(zoneHere)}>
          {words.zoneHere(zoneHere.replaceAll('_', ' '))}
        </button>
      )}
    </>
  );
}
