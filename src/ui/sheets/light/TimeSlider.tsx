/** The whole season, or one month or one hour of it. */
import { useId } from 'react';
import type { LightReport } from '../../../engine/reports.ts';
import { shortDay } from '../../fields/dates.ts';
import { Segments } from '../../fields/Segments.tsx';
import { monthPeriod } from '../../state/monthPeriod.ts';
import type { ShownTime } from '../../state/timeWork.ts';
import { useView, useWorkbench } from '../../state/workbench.ts';
import { timesIn } from './figures.ts';
import { timeWords as words } from './timeWords.ts';

interface TimeSliderProps {
  readonly season: LightReport;
  /** Of the time chosen; null while it is not known. */
  readonly openSkyMol: number | null;
}

const isSameTime = (one: ShownTime, other: ShownTime | null): boolean =>
  JSON.stringify(one) === JSON.stringify(other);

export function TimeSlider({ season, openSkyMol }: TimeSliderProps) {
  const { view } = useWorkbench();
  const { time, timeBy } = useView();
  const times = timesIn(season, timeBy);
  const id = useId();
  const place = times.findIndex((one) => isSameTime(one, time)) + 1;
  const month = time?.by === 'month' ? monthPeriod(season.period, time.month) : null;
  const { from, to } = month ?? season.period;
  const name = words.nameOf(time);
  return (
    <div className="month">
      <div className="month-head">
        <label htmlFor={id}>
          <span className="unseen">{words.sliders[timeBy]}: </span>
          <strong>{name}</strong> <span className="quiet">{words.days(shortDay(from), shortDay(to))}</span>
        </label>
        <span className="quiet">{openSkyMol === null ? '' : words.openSky(openSkyMol, time)}</span>
      </div>
      <input
        id={id}
        type="range"
        min={0}
        max={times.length}
        step={1}
        value={place}
        aria-valuetext={name}
        onChange={(event) => view.setState({ time: times[Number(event.target.value) - 1] ?? null })}
      />
      <div className="month-marks" aria-hidden="true">
        <span>{words.all}</span>
        {times.map((one) => (
          <span key={words.markOf(one)}>
            {words.markOf(one).slice(0, times.length > 8 && one.by === 'month' ? 1 : 3)}
          </span>
        ))}
      </div>
      <Segments
        label={words.by}
        isLabelHidden
        value={timeBy}
        options={(['month', 'hour'] as const).map((value) => ({ value, text: words.kinds[value] }))}
        onChoose={(chosen) => view.setState({ timeBy: chosen, time: null })}
      />
    </div>
  );
}
