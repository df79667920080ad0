/**
 * A calendar day. The browser writes it in the order of its own language, whatever the page's, so it is written out in
 * words beside it.
 */
import { useId } from 'react';
import type { IsoDate } from '../../season/site.ts';
import { longDay } from './dates.ts';

interface DateFieldProps {
  readonly label: string;
  readonly value: IsoDate;
  readonly onChoose: (date: IsoDate) => void;
}

export function DateField({ label, value, onChoose }: DateFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {label} <span className="field-said">{longDay(value)}</span>
      </label>
      <span className="field-entry">
        <input
          id={id}
          type="date"
          value={value}
          min="1900-01-01"
          max="2199-12-31"
          onChange={(event) =>
            event.target.validity.valid && event.target.value !== '' && onChoose(event.target.value)
          }
        />
      </span>
    </div>
  );
}
