/** The whole season, or one month of it. */
import { useId } from 'react';
import type { LightReport } from '../../../engine/reports.ts';
import { monthName, shortDay } from '../../fields/dates.ts';
import { monthPeriod } from '../../state/monthPeriod.ts';
import { useView, useWorkbench } from '../../state/workbench.ts';
import { monthsIn } from './figures.ts';
import { lightWords as words } from './words.ts';

interface MonthSliderProps {
  readonly report: LightReport;
  /** Null while it is not known for that month. */
  readonly openSkyMol: number | null;
}

export function MonthSlider({ report, openSkyMol }: MonthSliderProps) {
  const { light, view } = useWorkbench();
  const { month } = useView();
  const months = monthsIn(report);
  const id = useId();
  const place = month === null ? 0 : months.indexOf(month) + 1;
  const choose = (at: number) => {
    const chosen = months[at - 1] ?? null;
    view.setState({ month: chosen });
    if (chosen !== null) light.weigh(chosen);
  };
  const period = month === null ? report.period : (monthPeriod(report.period, month) ?? report.period);
  const name = month === null ? words.wholeSeason : monthName(month);
  return (
    <div className="month">
      <div className="month-head">
        <label htmlFor={id}>
          <span className="unseen">{words.month}: </span>
          <strong>{name}</strong>{' '}
          <span className="quiet">{words.days(shortDay(period.from), shortDay(period.to))}</span>
        </label>
        <span className="quiet">{openSkyMol === null ? '' : words.openSky(openSkyMol)}</span>
      </div>
      <input
        id={id}
        type="range"
        min={0}
        max={months.length}
        step={1}
        value={place}
        aria-valuetext={name}
        onChange={(event) => choose(Number(event.target.value))}
      />
      <div className="month-marks" aria-hidden="true">
        <span>All</span>
        {months.map((m) => (
          <span key={m}>{monthName(m).slice(0, months.length > 8 ? 1 : 3)}</span>
        ))}
      </div>
    </div>
  );
}
