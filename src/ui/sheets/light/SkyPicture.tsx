/** The round picture of the sky over a node, with the sun's ways over it. */
import { type PointerEvent, useEffect, useRef } from 'react';
import type { SkyAnswer } from '../../../engine/look.ts';
import { shortDay } from '../../fields/dates.ts';
import { stageColours } from '../../scene/stageColours.ts';
import { usePreferences } from '../../state/workbench.ts';
import { skyPixels } from './skyPixels.ts';
import type { SkyPoint, SkyWay } from './skySuns.ts';
import { skyWords as words } from './skyWords.ts';

interface SkyPictureProps {
  readonly answer: SkyAnswer;
  readonly ways: readonly SkyWay[];
  /** Id or name of the thing that is pointed out. */
  readonly marked: string | null;
  readonly onPoint: (at: SkyPoint) => void;
}

const [size, rim] = [400, 186];
const onPicture = ([toEast, toNorth]: SkyPoint): readonly [number, number] => [
  size / 2 + rim * toEast,
  size / 2 - rim * toNorth,
];

function Way({ way, index }: { readonly way: SkyWay; readonly index: number }) {
  const d = way.points.map((point, i) => `${i === 0 ? 'M' : 'L'}${onPicture(point).join(' ')}`).join('');
  const noon = way.hours[Math.floor(way.hours.length / 2)];
  return (
    <g className={`sky-way is-${index}`}>
      <path d={d} className="sky-way-rim" />
      <path d={d} />
      {way.hours.map(({ label, at }) => {
        const [x, y] = onPicture(at);
        return (
          <g key={label}>
            <circle cx={x} cy={y} r={3.2} />
            {Number(label) % 3 === 0 ? (
              <text x={x} y={y - 6} textAnchor="middle">
                {label}
              </text>
            ) : null}
          </g>
        );
      })}
      {noon === undefined ? null : (
        <text
          className="sky-date"
          x={onPicture(noon.at)[0]}
          y={onPicture(noon.at)[1] + 17}
          textAnchor="middle"
        >
          {shortDay(way.date)}
        </text>
      )}
    </g>
  );
}

const winds = [
  ['N', 0, 1.05],
  ['E', 1.05, 0],
  ['S', 0, -1.05],
  ['W', -1.05, 0],
] as const;

export function SkyPicture({ answer, ways, marked, onPoint }: SkyPictureProps) {
  const { theme } = usePreferences();
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const pen = canvas.current?.getContext('2d');
    if (pen === null || pen === undefined) return;
    const image = pen.createImageData(answer.size, answer.size);
    image.data.set(skyPixels(answer, stageColours[theme], marked));
    pen.putImageData(image, 0, 0);
  }, [answer, theme, marked]);
  const point = (event: PointerEvent<SVGSVGElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * size;
    const y = ((event.clientY - box.top) / box.height) * size;
    onPoint([(x - size / 2) / rim, (size / 2 - y) / rim]);
  };
  return (
    <div className="sky-picture">
      <canvas ref={canvas} width={answer.size} height={answer.size} aria-hidden="true" />
      <svg
        viewBox={`0 0 ${size} ${size}`}
        role="img"
        aria-label={words.picture(answer.name, answer.node)}
        onPointerDown={point}
      >
        <circle className="sky-rim" cx={size / 2} cy={size / 2} r={rim} />
        {[1 / 3, 2 / 3].map((share) => (
          <circle key={share} className="sky-ring" cx={size / 2} cy={size / 2} r={rim * share} />
        ))}
        {ways.map((way, i) => (
          <Way key={way.date} way={way} index={i} />
        ))}
        {winds.map(([letter, toEast, toNorth]) => {
          const [x, y] = onPicture([toEast, toNorth]);
          return (
            <text
              key={letter}
              className="sky-wind"
              x={x}
              y={y}
              textAnchor="middle"
              dominantBaseline="central"
            >
              {letter}
            </text>
          );
        })}
      </svg>
    </div>
  );
}
