/** How the tree stands: where, in what, and how it is turned. */
import type { TreeFile } from '../../../../document/treeFile.ts';
import { changePot, changeStanding, changeTurning } from '../../../../editor/edits/place.ts';
import { ChoiceField } from '../../../fields/ChoiceField.tsx';
import { NumberField } from '../../../fields/NumberField.tsx';
import { quantities } from '../../../fields/quantities.ts';
import { useFile, useWorkbench } from '../../../state/workbench.ts';
import { placeWords as words } from '../words.ts';

type Standing = TreeFile['standing'];

/** A pot of the size that most figs on terraces stand in. Our choice. */
const usualPot: NonNullable<Standing['pot']> = {
  topDiameterM: 0.45,
  baseDiameterM: 0.35,
  heightM: 0.4,
  soilBelowRimM: 0.04,
};
/** Weeks between quarter turns when they are first asked for. Our choice. */
const usualWeeks = 2;

const { fields } = words;
const potNumbers = [
  { label: fields.potTop, key: 'topDiameterM' },
  { label: fields.potBase, key: 'baseDiameterM' },
  { label: fields.potHeight, key: 'heightM' },
  { label: fields.soil, key: 'soilBelowRimM' },
] as const;

export function TreeForm() {
  const { editor } = useWorkbench();
  const file = useFile();
  const { pot, at, turnedDeg } = file.standing;
  const change = (part: Partial<Standing>) => void editor.make((old) => changeStanding(old, part));
  return (
    <div className="form picked-form" role="group" aria-label={file.name}>
      <NumberField
        label={fields.treeEast}
        value={at[0]}
        quantity={quantities.site}
        onCommit={(v) => change({ at: [v, at[1]] })}
      />
      <NumberField
        label={fields.treeNorth}
        value={at[1]}
        quantity={quantities.site}
        onCommit={(v) => change({ at: [at[0], v] })}
      />
      <ChoiceField
        label={fields.pot}
        value={pot === null ? 'ground' : 'pot'}
        options={[
          { value: 'pot', text: words.standings.pot },
          { value: 'ground', text: words.standings.ground },
        ]}
        onChoose={(choice) => editor.make((old) => changePot(old, choice === 'pot' ? usualPot : null))}
      />
      <NumberField
        label={fields.turned}
        value={turnedDeg}
        quantity={quantities.bearing}
        onCommit={(v) => change({ turnedDeg: v })}
      />
      {pot === null
        ? null
        : potNumbers.map(({ label, key }) => (
            <NumberField
              key={key}
              label={label}
              value={pot[key]}
              quantity={quantities.wood}
              onCommit={(v) => editor.make((old) => changePot(old, { ...pot, [key]: v }))}
            />
          ))}
      {pot === null ? null : <Turning />}
    </div>
  );
}

function Turning() {
  const { editor } = useWorkbench();
  const weeks = useFile().standing.quarterTurnEveryWeeks;
  const put = (next: number | null) => void editor.make((file) => changeTurning(file, next));
  return (
    <>
      <ChoiceField
        label={fields.turning}
        value={weeks === undefined ? 'never' : 'quarter'}
        options={[
          { value: 'never', text: words.turnings.never },
          { value: 'quarter', text: words.turnings.quarter },
        ]}
        onChoose={(choice) => put(choice === 'never' ? null : usualWeeks)}
      />
      {weeks === undefined ? null : (
        <NumberField label={fields.weeks} value={weeks} quantity={quantities.count} onCommit={put} />
      )}
    </>
  );
}
