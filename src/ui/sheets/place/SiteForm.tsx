/** The facts of the place and of how the tree stands. */
import type { TreeFile } from '../../../document/treeFile.ts';
import type { Edit } from '../../../editor/edit.ts';
import { changeSeason, changeSite, changeStanding } from '../../../editor/edits/place.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { DateField } from '../../fields/DateField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { quantities } from '../../fields/quantities.ts';
import { TextField } from '../../fields/TextField.tsx';
import { useFile, useWorkbench } from '../../state/workbench.ts';
import { placeWords as words } from './words.ts';

type Pot = NonNullable<TreeFile['standing']['pot']>;

/** A pot of the size that most figs on terraces stand in. Our choice. */
const usualPot: Pot = { topDiameterM: 0.45, baseDiameterM: 0.35, heightM: 0.4, soilBelowRimM: 0.04 };

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
        <NumberField
          label={fields.ground}
          value={site.groundReflectance}
          quantity={quantities.percent}
          onCommit={(v) => change({ groundReflectance: v })}
        />
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
        <Standing make={make} />
      </div>
    </section>
  );
}

function Standing({ make }: { readonly make: (edit: Edit) => void }) {
  const { pot, turnedDeg } = useFile().standing;
  const { fields } = words;
  const change = (part: Partial<TreeFile['standing']>) => make((file) => changeStanding(file, part));
  const lengths = [
    { label: fields.potTop, key: 'topDiameterM' },
    { label: fields.potBase, key: 'baseDiameterM' },
    { label: fields.potHeight, key: 'heightM' },
    { label: fields.soil, key: 'soilBelowRimM' },
  ] as const;
  return (
    <>
      <ChoiceField
        label={fields.pot}
        value={pot === null ? 'ground' : 'pot'}
        options={[
          { value: 'pot', text: words.standings.pot },
          { value: 'ground', text: words.standings.ground },
        ]}
        onChoose={(choice) => change({ pot: choice === 'pot' ? usualPot : null })}
      />
      <NumberField
        label={fields.turned}
        value={turnedDeg}
        quantity={quantities.bearing}
        onCommit={(v) => change({ turnedDeg: v })}
      />
      {pot === null
        ? null
        : lengths.map(({ label, key }) => (
            <NumberField
              key={key}
              label={label}
              value={pot[key]}
              quantity={quantities.wood}
              onCommit={(v) => change({ pot: { ...pot, [key]: v } })}
            />
          ))}
    </>
  );
}
