/** The facts of the place. */
import type { TreeFile } from '../../../document/treeFile.ts';
import type { Edit } from '../../../editor/edit.ts';
import { changeSeason, changeSite } from '../../../editor/edits/place.ts';
import { DateField } from '../../fields/DateField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { quantities } from '../../fields/quantities.ts';
import { TextField } from '../../fields/TextField.tsx';
import { useFile, useWorkbench } from '../../state/workbench.ts';
import { placeWords as words } from './words.ts';
import { ZoneField } from './ZoneField.tsx';

export function SiteForm() {
  const { editor } = useWorkbench();
  const { site, season } = useFile();
  const { fields } = words;
  const make = (edit: Edit) => void editor.make(edit);
  const change = (part: Partial<TreeFile['site']>) => make((file) => changeSite(file, part));
  return (
    <section>
      <h2 className="small-head">{words.place}</h2>
      <div className="form">
        <TextField label={fields.name} value={site.name} onCommit={(name) => change({ name })} />
        <NumberField
          label={fields.latitude}
          value={site.latitudeDeg}
          quantity={quantities.coordinate}
          onCommit={(v) => change({ latitudeDeg: v })}
        />
        <NumberField
          label={fields.longitude}
          value={site.longitudeDeg}
          quantity={quantities.coordinate}
          onCommit={(v) => change({ longitudeDeg: v })}
        />
        <NumberField
          label={fields.elevation}
          value={site.elevationM}
          quantity={quantities.site}
          onCommit={(v) => change({ elevationM: v })}
        />
        <ZoneField />
        <DateField
          label={words.budBreak}
          value={season.budBreakOn}
          onChoose={(budBreakOn) => make((file) => changeSeason(file, { budBreakOn }))}
        />
        <DateField
          label={words.sketched}
          value={season.sketchedOn}
          onChoose={(sketchedOn) => make((file) => changeSeason(file, { sketchedOn }))}
        />
      </div>
    </section>
  );
}
