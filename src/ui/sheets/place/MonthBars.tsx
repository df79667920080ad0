/** Twelve months as bars, each with its figure in the units on show. */

import { monthNames } from '../../../season/calendar.ts';
import type { Monthly } from '../../../season/site.ts';
import type { Quantity } from '../../fields/quantities.ts';
import { useUnits } from '../../state/workbench.ts';

interface MonthBarsProps {
  readonly title: string;
  readonly values: Monthly;
  readonly quantity: Quantity;
}

/** At most three letters fit over a bar: tenths only below 1. */
const short = (text: string): string =>
  Math.abs(Number(text)) < 1 ? text.replace('0.', '.') : String(Math.round(Number(text)));

const [width, height, foot, head] = [240, 96, 15, 14];

export function MonthBars({ title, values, quantity }: MonthBarsProps) {
  const units = useUnits();
  const written = (value: number) => quantity.write(value, units);
  const most = Math.max(1e-9, ...values);
  const least = Math.min(0, ...values);
  const room = height - foot - head;
  const y = (value: number) => head + ((most - value) / (most - least)) * room;
  const step = width / 12;
  const heard = values.map((v, i) => `${monthNames[i] ?? ''} ${written(v)}`).join(', ');
  return (
    <figure className="month-bars">
      <figcaption className="small">{title}</figcaption>
      <svg className="chart" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`${title}: ${heard}`}>
        {values.map((value, i) => (
          <g key={monthNames[i]}>
            <rect
              className="bar-month"
              x={i * step + 2}
              y={Math.min(y(value), y(0))}
              width={step - 4}
              height={Math.abs(y(value) - y(0))}
            />
            <text x={(i + 0.5) * step} y={Math.min(y(value), y(0)) - 3} textAnchor="middle">
              {short(written(value))}
            </text>
            <text className="chart-month" x={(i + 0.5) * step} y={height - 2} textAnchor="middle">
              {monthNames[i]?.charAt(0)}
            </text>
          </g>
        ))}
        <line className="chart-base" x1={0} x2={width} y1={y(0)} y2={y(0)} />
      </svg>
    </figure>
  );
}
