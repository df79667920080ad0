/** Who gets how much light. */
import { useEffect, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import type { LightAnswer } from '../../../engine/engine.ts';
import type { LightReport } from '../../../engine/reports.ts';
import { Segments } from '../../fields/Segments.tsx';
import { Progress } from '../../frame/Progress.tsx';
import { drawnCanopy } from '../../stage/drawnCanopy.ts';
import { colourings } from '../../stage/leafShares.ts';
import { useLightScale } from '../../stage/useLightScale.ts';
import { useShownLight } from '../../stage/useShownLight.ts';
import { lookings, useShownFile, useView, useWorkbench } from '../../state/workbench.ts';
import type { LightClass, LightScale } from '../../theme/lightScale.ts';
import { ClassBar } from './ClassBar.tsx';
import { DaySection } from './DaySection.tsx';
import { countByClass, innerShoots, type ShootRow, shootRows, spotOf } from './figures.ts';
import { Limits } from './Limits.tsx';
import { Meaning } from './Meaning.tsx';
import { ShootTable } from './ShootTable.tsx';
import { SkySection } from './SkySection.tsx';
import { SpreadSection } from './SpreadSection.tsx';
import { TimeSlider } from './TimeSlider.tsx';
import { timeWords } from './timeWords.ts';
import { lightWords as words } from './words.ts';

export function LightSheet() {
  const { season, time, weighed } = useShownLight();
  const scale = useLightScale();
  const rows = useMemo(
    () => (season === null ? [] : shootRows(season.report, time, weighed?.report ?? null)),
    [season, time, weighed],
  );
  if (season === null) return <NoAnswer />;
  const shown = time === null ? season : weighed;
  return (
    <>
      <Headline rows={rows} scale={scale} />
      <State />
      <TimeSlider season={season.report} openSkyMol={shown?.report.openSkyParMolM2Day ?? null} />
      <ClassBar counts={countByClass(rows, scale)} total={rows.length} />
      <Looking rows={rows} scale={scale} season={season.report} shown={shown} />
      <Meaning />
      <Limits />
    </>
  );
}

interface LookingProps {
  readonly rows: readonly ShootRow[];
  readonly scale: LightScale;
  readonly season: LightReport;
  /** Over the time chosen; null while it is not known. */
  readonly shown: LightAnswer | null;
}

/** The shoots in a table, one day, the sky from a node, or the spread over all shoots. */
function Looking({ rows, scale, season, shown }: LookingProps) {
  const { view } = useWorkbench();
  const { lookingAt, colouring } = useView();
  const top = useRef<HTMLDivElement>(null);
  const before = useRef(lookingAt);
  useEffect(() => {
    if (before.current === lookingAt) return;
    before.current = lookingAt;
    // What was chosen comes up beside the tree, under a thumb as well.
    top.current?.scrollIntoView({ block: 'start' });
  }, [lookingAt]);
  return (
    <>
      <div ref={top} className="lookings">
        <Segments
          label={words.lookingAt}
          isLabelHidden
          value={lookingAt}
          options={lookings.map((value) => ({ value, text: words.lookings[value] }))}
          onChoose={(chosen) => view.setState({ lookingAt: chosen })}
        />
      </div>
      <div className="looking">
        {lookingAt === 'shoots' ? (
          <>
            <Segments
              label={words.colouring}
              value={colouring}
              options={colourings.map((value) => ({ value, text: words.colourings[value] }))}
              onChoose={(chosen) => view.setState({ colouring: chosen })}
            />
            {colouring === 'leaf' ? <p className="quiet small">{words.leafNote}</p> : null}
            <ShootTable rows={rows} scale={scale} shown={shown} />
          </>
        ) : null}
        {lookingAt === 'day' ? <DaySection /> : null}
        {lookingAt === 'sky' ? <SkySection rows={rows} season={season.period} /> : null}
        {lookingAt === 'spread' ? <SpreadSection rows={rows} scale={scale} season={season} /> : null}
      </div>
    </>
  );
}

function NoAnswer() {
  return (
    <>
      <p className="headline">{words.waiting}</p>
      <State />
    </>
  );
}

function Headline({ rows, scale }: { readonly rows: readonly ShootRow[]; readonly scale: LightScale }) {
  const { view } = useWorkbench();
  const file = useShownFile();
  const { time, spotlight } = useView();
  const inner = useMemo(() => innerShoots(drawnCanopy(file, 'in full leaf')), [file]);
  const darkest = scale.classes[0] as LightClass;
  const dark = rows.filter((row) => row.lightFraction < darkest.to);
  const inside = dark.filter((row) => inner.has(row.id)).length;
  return (
    <div className="answer">
      <p className="headline" data-testid="headline">
        {words.headline(dark.length, rows.length, inside, timeWords.inHeadline(time))}
      </p>
      {spotlight !== null || dark.length > 0 ? (
        <button
          type="button"
          className="button is-small"
          onClick={() => view.setState({ spotlight: spotlight === null ? spotOf(darkest) : null })}
        >
          {spotlight === null ? words.showDark : words.showAll}
        </button>
      ) : null}
    </div>
  );
}

/** Whether the figures are of the tree on the page, and how far the new ones are. */
function State() {
  const { light } = useWorkbench();
  const file = useShownFile();
  const { isStale, season: answer } = useShownLight();
  const { progress, stopped } = useStore(light.store);
  const text = isStale
    ? progress === null
      ? words.staleStopped
      : words.stale
    : progress !== null && answer !== null
      ? words.coarse
      : stopped?.why === 'cancelled'
        ? words.cancelled
        : null;
  return (
    <div className="state">
      <p role="status" className={isStale ? 'state-words is-stale' : 'state-words'} data-testid="light-state">
        {text}
      </p>
      <Progress step={progress} onCancel={light.cancel} />
      {stopped?.why === 'failed' ? (
        <p role="alert" className="is-wrong">
          {words.failed(stopped.message)}
        </p>
      ) : null}
      {stopped === null ? null : (
        <button type="button" className="button" onClick={() => light.trace(file)}>
          {words.again}
        </button>
      )}
    </div>
  );
}
