/** The pinch of early summer: what to do, and the harvest week by week with it and without. */
import { formatDecimal } from '../../../geometry/measure.ts';
import type { PinchAdvice } from '../../../plan/pinchPlan.ts';
import { pinchText } from '../../../plan/pinchWords.ts';
import { shortDay } from '../../fields/dates.ts';
import { seasonWords as words } from './seasonWords.ts';

export function PinchSection({ pinch }: { readonly pinch: PinchAdvice | null }) {
  if (pinch === null) return null;
  return (
    <details>
      <summary>{words.pinch(shortDay(pinch.when.from), shortDay(pinch.when.to))}</summary>
      <p>{pinchText(pinch)}</p>
      <HarvestChart weeks={pinch.weeks} />
      <HarvestTable weeks={pinch.weeks} />
    </details>
  );
}

type Weeks = PinchAdvice['weeks'];

const [width, height, foot, head] = [360, 112, 30, 16];

/** Two bars a week; a line below the weeks that are warm and dry. */
function HarvestChart({ weeks }: { readonly weeks: Weeks }) {
  const most = Math.max(1e-9, ...weeks.flatMap((week) => [week.with, week.without]));
  const step = width / Math.max(1, weeks.length);
  const tall = (figs: number) => (figs / most) * (height - foot - head);
  const every = Math.ceil(weeks.length / 6);
  return (
    <svg
      className="chart harvest"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={words.harvestPicture}
    >
      <text x={0} y={11}>
        <tspan className="key-plain">□</tspan> {words.without} <tspan className="key-pinched">■</tspan>{' '}
        {words.with} <tspan className="key-sun">▬</tspan> {words.goodWeeks}
      </text>
      {weeks.map((week, i) => {
        const x = i * step;
        const base = height - foot;
        return (
          <g key={week.from}>
            <rect
              className="bar-plain"
              x={x + step * 0.1}
              y={base - tall(week.without)}
              width={step * 0.38}
              height={tall(week.without)}
            />
            <rect
              className="bar-pinched"
              x={x + step * 0.52}
              y={base - tall(week.with)}
              width={step * 0.38}
              height={tall(week.with)}
            />
            {week.isGood ? <rect className="bar-sun" x={x} y={base + 2} width={step} height={4} /> : null}
            {i % every === 0 ? (
              <text x={Math.min(x + 1, width - 34)} y={height - 8}>
                {shortDay(week.from)}
              </text>
            ) : null}
          </g>
        );
      })}
      <line className="chart-base" x1={0} x2={width} y1={height - foot} y2={height - foot} />
    </svg>
  );
}

function HarvestTable({ weeks }: { readonly weeks: Weeks }) {
  return (
    <table className="rows" aria-label={words.harvest}>
      <thead>
        <tr>
          {words.weekColumns.map((column, i) => (
            <th key={column} scope="col" className={i === 0 ? '' : 'figure'}>
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {weeks.map((week) => (
          <tr key={week.from}>
            <th scope="row">{shortDay(week.from)}</th>
            <td className="figure">{formatDecimal(week.without, 1)}</td>
            <td className="figure">{formatDecimal(week.with, 1)}</td>
            <td className="figure">{week.isGood ? words.yes : words.no}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
