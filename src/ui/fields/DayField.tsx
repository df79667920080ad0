/** A day of any year: the day and the month side by side. */
import { useId } from 'react';
import { monthNames } from '../../season/calendar.ts';
import type { DayOfYear } from '../../season/site.ts';
import { dayOfYear } from './dates.ts';

interface DayFieldProps {
  readonly label: string;
  readonly value: DayOfYear;
  readonly onChoose: (day: DayOfYear) => void;
}

const days = Array.from({ length: 31 }, (_, i) => i + 1);

export function DayField({ label, value, onChoose }: DayFieldProps) {
  const id = useId();
  const [month = 1, day = 1] = value.split('-').map(Number);
  const choose = (toMonth: number, toDay: number) => onChoose(dayOfYear(toMonth, toDay));
  return (
    <fieldset className="field">
      <legend id={id} className="field-label">
        {label}
      </legend>
      <span className="field-entry">
        <select
          className="is-day"
          aria-label="Day"
          aria-describedby={id}
          value={day}
          onChange={(event) => choose(month, Number(event.target.value))}
        >
          {days.map((n) => (
            <option key={n}>{n}</option>
          ))}
        </select>
        <select
          aria-label="Month"
          aria-describedby={id}
          value={month}
          onChange={(event) => choose(Number(event.target.value), day)}
        >
          {monthNames.map((name, i) => (
            <option key={name} value={i + 1}>
              {name}
            </option>
          ))}
        </select>
      </span>
    </fieldset>
  );
}
