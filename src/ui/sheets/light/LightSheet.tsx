/** Who gets how much light. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { monthName } from '../../fields/dates.ts';
import { Progress } from '../../frame/Progress.tsx';
import { drawnCanopy } from '../../stage/drawnCanopy.ts';
import { thresholdsOf } from '../../state/thresholds.ts';
import { useFile, useView, useWorkbench } from '../../state/workbench.ts';
import { makeLightScale } from '../../theme/lightScale.ts';
import { ClassBar } from './ClassBar.tsx';
import { countByClass, innerShoots, type ShootRow, shootRows } from './figures.ts';
import { Meaning } from './Meaning.tsx';
import { MonthSlider } from './MonthSlider.tsx';
import { ShootTable } from './ShootTable.tsx';
import { SunChooser } from './SunChooser.tsx';
import { lightWords as words } from './words.ts';

export function LightSheet() {
  const { light } = useWorkbench();
  const file = useFile();
  const { month } = useView();
  const { answer, months } = useStore(light.store);
  const scale = useMemo(() => makeLightScale(thresholdsOf(file)), [file]);
  if (answer === null) return <NoAnswer />;
  const weighed = month === null ? null : (months.get(month)?.report ?? null);
  const rows = shootRows(answer.report, month, weighed);
  const openSky = weighed ?? answer.report;
  return (
    <>
      <Headline rows={rows} />
      <State />
      <MonthSlider
        report={answer.report}
        openSkyMol={month === null || weighed ? openSky.openSkyParMolM2Day : null}
      />
      <ClassBar counts={countByClass(rows, scale)} total={rows.length} />
      <Meaning />
      <SunChooser />
      <ShootTable rows={rows} scale={scale} />
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

function Headline({ rows }: { readonly rows: readonly ShootRow[] }) {
  const file = useFile();
  const { month } = useView();
  const inner = useMemo(() => innerShoots(drawnCanopy(file, 'in full leaf')), [file]);
  const { deepShade } = thresholdsOf(file);
  const dark = rows.filter((row) => row.lightFraction < deepShade);
  const when = month === null ? words.overSeason : words.inMonth(monthName(month));
  const inside = dark.filter((row) => inner.has(row.id)).length;
  return (
    <p className="headline" data-testid="headline">
      {words.headline(dark.length, rows.length, inside, when)}
    </p>
  );
}

/** Whether the figures are of the tree on the page, and how far the new ones are. */
function State() {
  const { light } = useWorkbench();
  const file = useFile();
  const { file: litFile, answer, progress, stopped } = useStore(light.store);
  const isStale = answer !== null && litFile !== file;
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
