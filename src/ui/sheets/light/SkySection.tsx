/** The sky as it is seen from one node, and what stands before the sun. */
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { SkyAnswer } from '../../../engine/look.ts';
import type { Period } from '../../../season/site.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { shortDay } from '../../fields/dates.ts';
import { drawnCanopy } from '../../stage/drawnCanopy.ts';
import { nodesOf, skyPlaceIn } from '../../stage/skyPlace.ts';
import { type NodePlace, skyKey } from '../../state/lookWork.ts';
import { useFile, useSelected, useView, useWorkbench } from '../../state/workbench.ts';
import type { ShootRow } from './figures.ts';
import { LookState } from './LookState.tsx';
import { SkyPicture } from './SkyPicture.tsx';
import { type BeforeSun, beforeTheSun, type SkyPoint, skyWay, thingAt, threeDates } from './skySuns.ts';
import { skyWords as words } from './skyWords.ts';

interface SkySectionProps {
  /** Darkest first. */
  readonly rows: readonly ShootRow[];
  readonly season: Period;
}

export function SkySection({ rows, season }: SkySectionProps) {
  const { look, view, editor } = useWorkbench();
  const file = useFile();
  const { skyAt } = useView();
  const selected = useSelected();
  const canopy = drawnCanopy(file, 'in full leaf');
  const looked = useStore(look.sky);
  const { shootId, node } = skyPlaceIn(canopy, skyAt, selected, rows[0]?.id ?? '');
  const hasNode = canopy.shoots.some(({ id }) => id === shootId);
  useEffect(() => {
    if (hasNode) look.showSky(file, { shootId, node });
  }, [look, file, hasNode, shootId, node]);
  if (!hasNode) return <p>{words.noShoots}</p>;
  const nodes = nodesOf(canopy, shootId);
  const choose = (place: NodePlace): void => {
    view.setState({ skyAt: place });
    editor.select(place.shootId);
  };
  const isCurrent = looked.file === file && looked.of === skyKey({ shootId, node });
  return (
    <section className="look" aria-label={words.title}>
      <div className="sky-where">
        <ChoiceField
          label={words.shoot}
          value={shootId}
          options={canopy.shoots.map(({ id, name }) => ({ value: id, text: name }))}
          onChoose={(id) => choose(skyPlaceIn(canopy, null, null, id))}
        />
        <ChoiceField
          label={words.node}
          value={String(node)}
          options={nodes.map((n) => ({ value: String(n), text: words.nodeOf(n, nodes.length) }))}
          onChoose={(n) => choose({ shootId, node: Number(n) })}
        />
      </div>
      <LookState looked={looked} onAgain={() => look.showSky(file, { shootId, node })} />
      {looked.answer === null ? null : (
        <div className={isCurrent ? 'look' : 'look is-old'}>
          <Sky answer={looked.answer} season={season} />
        </div>
      )}
    </section>
  );
}

function Sky({ answer, season }: { readonly answer: SkyAnswer; readonly season: Period }) {
  const { site } = useFile();
  const [marked, setMarked] = useState<string | null>(null);
  const [said, setSaid] = useState<string>(words.tapHint);
  const dates = useMemo(() => threeDates(season, site), [season, site]);
  const ways = useMemo(() => dates.map((date) => skyWay(date, site)), [dates, site]);
  const before = useMemo(() => beforeTheSun(answer, dates, site), [answer, dates, site]);
  const onPoint = (at: SkyPoint): void => {
    const thing = thingAt(answer, at);
    if (thing === null) return;
    setMarked(thing.kind === 'sky' ? null : 'id' in thing ? thing.id : thing.name);
    setSaid(thing.kind === 'sky' ? words.openHere : words.standsHere(thing.name));
  };
  return (
    <>
      <SkyPicture answer={answer} ways={ways} marked={marked} onPoint={onPoint} />
      <p role="status">{said}</p>
      <Shares answer={answer} />
      <BeforeTable dates={dates} before={before} marked={marked} onMark={setMarked} />
      <p className="quiet small">{words.orientation}</p>
    </>
  );
}

function Shares({ answer: { open, light } }: { readonly answer: SkyAnswer }) {
  return (
    <dl className="shares" aria-label={words.sharesTitle}>
      {words.shares(open.cosine, open.solidAngle, light.cosine).map(([name, share, meaning]) => (
        <div key={name}>
          <dt>
            {name}
            <span className="quiet small">{meaning}</span>
          </dt>
          <dd>{share}</dd>
        </div>
      ))}
    </dl>
  );
}

/** More rows than this say little. */
const mostRows = 8;

interface BeforeTableProps {
  readonly dates: readonly string[];
  readonly before: readonly BeforeSun[];
  readonly marked: string | null;
  readonly onMark: (of: string | null) => void;
}

function BeforeTable({ dates, before, marked, onMark }: BeforeTableProps) {
  const { editor } = useWorkbench();
  const shown = before.slice(0, mostRows + 1);
  const mark = ({ id, name }: BeforeSun): void => {
    const of = id ?? name;
    onMark(of === marked ? null : of);
    if (id !== null && of !== marked) editor.select(id);
  };
  return (
    <div>
      <table className="rows">
        <caption className="small-head">{words.before}</caption>
        <thead>
          <tr>
            <th scope="col">{words.beforeColumns.what}</th>
            {dates.map((date) => (
              <th key={date} scope="col" className="figure">
                {shortDay(date)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <tr key={row.id ?? row.name ?? ''}>
              <th scope="row">
                {row.name === null ? (
                  words.openSun
                ) : (
                  <button
                    type="button"
                    className="row-button"
                    aria-pressed={marked === (row.id ?? row.name)}
                    onClick={() => mark(row)}
                  >
                    {row.name}
                  </button>
                )}
              </th>
              {row.hours.map((h, i) => (
                <td key={dates[i]} className="figure">
                  {h < 0.05 ? '' : words.hours(h)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {before.length > shown.length ? (
        <p className="quiet small">{words.more(before.length - shown.length)}</p>
      ) : null}
    </div>
  );
}
