/** Ripe figs and light against shoots kept: two pictures over one scale, to be read point by point. */
import { useId, useState } from 'react';
import type { Boldness, ChoicePoint } from '../../../plan/choice.ts';
import { choiceWords as words } from './choiceWords.ts';
import { type Plotted, plot, span } from './plot.ts';

const [width, height, left, right, head, foot] = [360, 92, 28, 4, 16, 16];
const frame = { left, top: head, width: width - left - right, height: height - head - foot };

interface ChoiceChartProps {
  readonly points: readonly ChoicePoint[];
  readonly boldness: Boldness;
  readonly onChoose: (boldness: Boldness) => void;
}

export function ChoiceChart({ points, boldness, onChoose }: ChoiceChartProps) {
  const chosen = points.findIndex(({ reads }) => reads.includes(boldness));
  const [readAt, setReadAt] = useState<number | null>(null);
  const at = Math.min(readAt ?? chosen, points.length - 1);
  const point = points[at] ?? points[0];
  const id = useId();
  if (point === undefined) return null;
  const read = (i: number) => {
    setReadAt(i);
    const [only] = points[i]?.reads ?? [];
    if (only !== undefined && points[i]?.reads.includes(boldness) === false) onChoose(only);
  };
  return (
    <figure className="choice-chart">
      <figcaption className="unseen" id={id}>
        {words.picture(points)}
      </figcaption>
      <Curve
        points={points}
        of={({ ripeFigs }) => ripeFigs}
        title={words.figs}
        at={at}
        boldness={boldness}
        onRead={read}
      />
      <Curve
        points={points}
        of={({ meanLight }) => 100 * meanLight}
        title={words.light}
        at={at}
        boldness={boldness}
        onRead={read}
      />
      <label className="choice-slider">
        <span className="small quiet">{words.slider}</span>
        <input
          type="range"
          min={0}
          max={points.length - 1}
          value={at}
          aria-describedby={id}
          aria-valuetext={words.read(point)}
          onChange={(event) => setReadAt(Number(event.target.value))}
        />
      </label>
      <p className="choice-read" aria-live="polite">
        {words.read(point)}
      </p>
    </figure>
  );
}

interface CurveProps extends Pick<ChoiceChartProps, 'points' | 'boldness'> {
  readonly of: (point: ChoicePoint) => number;
  readonly title: string;
  readonly at: number;
  readonly onRead: (index: number) => void;
}

function Curve({ points, of, title, at, boldness, onRead }: CurveProps) {
  const shoots = points.map((point) => point.shoots);
  const values = points.map(of);
  const scale = { x: span(shoots, 0.03), y: span(values, 0.15) };
  const places = plot(shoots, values, scale, frame);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const line = places.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');
  return (
    <svg
      className="chart"
      viewBox={`0 0 ${width} ${height}`}
      aria-hidden="true"
      onClick={(event) => onRead(nearest(places, event))}
    >
      <text x={0} y={10}>
        {title}
      </text>
      {[low, high].map((value) => (
        <text
          key={value}
          x={left - 6}
          y={plot([shoots[0] ?? 0], [value], scale, frame)[0]?.y}
          dy={4}
          textAnchor="end"
        >
          {words.figure(value, high - low)}
        </text>
      ))}
      <line className="chart-base" x1={places[at]?.x} x2={places[at]?.x} y1={head} y2={height - foot} />
      {[0, points.length - 1].map((i) => (
        <text key={i} x={places[i]?.x} y={height - 3} textAnchor={i === 0 ? 'start' : 'end'}>
          {words.shoots(shoots[i] ?? 0)}
        </text>
      ))}
      <path className="choice-line" d={line} />
      {points.map(({ reads, withinLimits }, i) =>
        reads.length === 0 && i !== at ? null : (
          <circle
            key={shoots[i]}
            className={
              reads.includes(boldness)
                ? 'choice-dot is-chosen'
                : withinLimits
                  ? 'choice-dot'
                  : 'choice-dot is-beyond'
            }
            cx={places[i]?.x}
            cy={places[i]?.y}
            r={reads.length === 0 ? 3 : 5}
          />
        ),
      )}
    </svg>
  );
}

/** The point nearest to a tap, by number of shoots. */
function nearest(
  places: readonly Plotted[],
  { currentTarget, clientX }: React.MouseEvent<SVGElement>,
): number {
  const box = currentTarget.getBoundingClientRect();
  const x = ((clientX - box.left) / box.width) * width;
  const gaps = places.map((place) => Math.abs(place.x - x));
  return gaps.indexOf(Math.min(...gaps));
}
