/** Over the stage: ways to see into the crown. */
import { useId, useState } from 'react';
import { type Looks, useShownFile, useUnits, useView, useWorkbench } from '../state/workbench.ts';
import { drawnCanopy } from './drawnCanopy.ts';
import { insideWords as words } from './insideWords.ts';
import { heightsBetween } from './seeInside.ts';

/** From mark to mark of the heights, metres: a hand's breadth is enough. */
const stepM = 0.05;
const all: Looks = { findsShade: false, isCutAway: false, heightsM: null };

export function Inside() {
  const { looks } = useView();
  // Closed, it asks for nothing: a tree that is pulled is not grown for it.
  const [isOpen, setOpen] = useState(false);
  const isSet = looks.findsShade || looks.isCutAway || looks.heightsM !== null;
  return (
    <details className="inside" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className={isSet ? 'button is-set' : 'button'}>{words.title}</summary>
      {isOpen ? <Ways isSet={isSet} /> : null}
    </details>
  );
}

function Ways({ isSet }: { readonly isSet: boolean }) {
  const { view } = useWorkbench();
  const { looks } = useView();
  const change = (part: Partial<Looks>) => view.setState({ looks: { ...looks, ...part } });
  return (
    <div className="inside-ways" role="group" aria-label={words.group}>
      <Switch
        text={words.findShade}
        title={words.findShadeTitle}
        isOn={looks.findsShade}
        onChange={(findsShade) => change({ findsShade })}
      />
      <Switch
        text={words.cutAway}
        title={words.cutAwayTitle}
        isOn={looks.isCutAway}
        onChange={(isCutAway) => change({ isCutAway })}
      />
      <Heights heightsM={looks.heightsM} onChange={(heightsM) => change({ heightsM })} />
      <button
        type="button"
        className="button is-small inside-all"
        disabled={!isSet}
        onClick={() => view.setState({ looks: all })}
      >
        {words.all}
      </button>
    </div>
  );
}

interface SwitchProps {
  readonly text: string;
  readonly title: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
}

const Switch = ({ text, title, isOn, onChange }: SwitchProps) => (
  <label className="inside-switch" title={title}>
    <input type="checkbox" checked={isOn} onChange={(event) => onChange(event.target.checked)} />
    {text}
  </label>
);

interface HeightsProps extends Pick<Looks, 'heightsM'> {
  readonly onChange: (heightsM: Looks['heightsM']) => void;
}

/** The two ends of one stretch of heights. */
function Heights({ heightsM, onChange }: HeightsProps) {
  const file = useShownFile();
  const { leaves } = drawnCanopy(file, 'in full leaf');
  const highestM = leaves.reduce((most, { bladeFrom }) => Math.max(most, bladeFrom[1]), 0);
  const topM = Math.ceil(highestM / stepM + 1) * stepM;
  const [fromM, toM] = heightsM ?? [0, topM];
  return (
    <>
      <End
        label={words.from}
        valueM={fromM}
        topM={topM}
        onChange={(valueM) => onChange(heightsBetween('from', [valueM, toM], topM))}
      />
      <End
        label={words.upTo}
        valueM={toM}
        topM={topM}
        onChange={(valueM) => onChange(heightsBetween('to', [fromM, valueM], topM))}
      />
    </>
  );
}

interface EndProps {
  readonly label: string;
  readonly valueM: number;
  readonly topM: number;
  readonly onChange: (valueM: number) => void;
}

function End({ label, valueM, topM, onChange }: EndProps) {
  const id = useId();
  const text = words.height(valueM, useUnits());
  return (
    <div className="form-slider">
      <label htmlFor={id}>{label}</label>
      <output htmlFor={id}>{text}</output>
      <input
        id={id}
        type="range"
        min={0}
        max={topM}
        step={stepM}
        value={valueM}
        aria-valuetext={text}
        onChange={(event) => onChange(Number(event.target.value))}
      />
    </div>
  );
}
