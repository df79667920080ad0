/** One day: when the sun falls on what, and the tree as the sun sees it. */
import { type KeyboardEvent, useEffect, useId } from 'react';
import { useStore } from 'zustand';
import type { DayAnswer } from '../../../engine/look.ts';
import { formatDecimal } from '../../../geometry/measure.ts';
import { DateField } from '../../fields/DateField.tsx';
import { stepAt } from '../../stage/dayMoment.ts';
import { riseAndSet } from '../../stage/sunView.ts';
import { useFile, useView, useWorkbench } from '../../state/workbench.ts';
import { dayWords as words } from './dayWords.ts';
import { LookState } from './LookState.tsx';
import { Strip } from './Strip.tsx';

export function DaySection() {
  const { look, view } = useWorkbench();
  const file = useFile();
  const { sunDate } = useView();
  const date = sunDate ?? file.season.sketchedOn;
  const looked = useStore(look.day);
  const times = riseAndSet(date, file.site);
  useEffect(() => look.showDay(file, date), [look, file, date]);
  const isCurrent = looked.file === file && looked.of === date;
  return (
    <section className="look" aria-label={words.title}>
      <DateField label={words.date} value={date} onChoose={(chosen) => view.setState({ sunDate: chosen })} />
      {times === null ? null : <p className="quiet small">{words.riseAndSet(...times)}</p>}
      <LookState looked={looked} onAgain={() => look.showDay(file, date)} />
      {looked.answer === null ? null : looked.answer.report.steps.length === 0 ? (
        <p>{words.noSun}</p>
      ) : (
        <div className={isCurrent ? 'look' : 'look is-old'}>
          <Moment answer={looked.answer} />
        </div>
      )}
    </section>
  );
}

/** The time of day, and what the sun falls on then. */
function Moment({ answer }: { readonly answer: DayAnswer }) {
  const { view } = useWorkbench();
  const { sunHour, isFromSun } = useView();
  const { steps, shoots, openParMolM2Day, dayLengthH, leafSeason } = answer.report;
  const step = stepAt(steps, sunHour);
  const now = steps[step];
  const id = useId();
  const goTo = (to: number): void => {
    const chosen = steps[Math.min(steps.length - 1, Math.max(0, to))];
    if (chosen !== undefined) view.setState({ sunHour: chosen.solarHour });
  };
  if (now === undefined) return null;
  const sunlit = shoots.filter((shoot) => (shoot.sunlit[step] ?? 0) > 0).length;
  const onKeyDown = (event: KeyboardEvent) => {
    const by = event.key === 'PageUp' ? 6 : event.key === 'PageDown' ? -6 : 0;
    if (by === 0) return;
    event.preventDefault();
    goTo(step + by);
  };
  return (
    <>
      <div>
        <label htmlFor={id} className="month-head">
          <strong>{words.clock(now.clock)}</strong>
          <span className="quiet">{words.sunStands(now.bearingDeg, now.altitudeDeg)}</span>
        </label>
        <input
          id={id}
          type="range"
          min={0}
          max={steps.length - 1}
          step={1}
          value={step}
          aria-valuetext={words.clock(now.clock)}
          onKeyDown={onKeyDown}
          onChange={(event) => goTo(Number(event.target.value))}
        />
        <p className="button-row">
          <button
            type="button"
            className="button"
            aria-pressed={isFromSun}
            onClick={() => view.setState({ isFromSun: !isFromSun })}
          >
            {words.fromSun}
          </button>
        </p>
      </div>
      <p data-testid="moment">
        {words.inSun(sunlit, shoots.length, now.clock)} {isFromSun ? words.asSunSees : words.asStageShows}
      </p>
      <Strip answer={answer} step={step} onTime={goTo} />
      <p className="quiet small">
        {words.openDay(formatDecimal(dayLengthH, 1), formatDecimal(openParMolM2Day, 0))} {words.key}
      </p>
      {leafSeason.daysOutside > 0 ? <p>{words.bare}</p> : null}
    </>
  );
}
