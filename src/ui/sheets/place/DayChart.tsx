/** The light of a day by the hour: straight from the sun above, from the sky below. */
import type { OpenSkyHour } from '../../../light/sky/openSkyDay.ts';
import { placeWords as words } from './words.ts';

const [width, height, foot] = [360, 84, 16];

export function DayChart({ hours }: { readonly hours: readonly OpenSkyHour[] }) {
  const most = Math.max(1e-9, ...hours.map((h) => h.beamParMolM2 + h.diffuseParMolM2));
  const step = width / 24;
  const tall = (mol: number) => (mol / most) * (height - foot);
  return (
    <svg className="chart" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words.dayPicture}>
      {hours.map(({ solarHour, beamParMolM2, diffuseParMolM2 }) => {
        const [sky, sun] = [tall(diffuseParMolM2), tall(beamParMolM2)];
        const x = solarHour * step + 1;
        return (
          <g key={solarHour}>
            <rect className="bar-sky" x={x} y={height - foot - sky} width={step - 2} height={sky} />
            <rect className="bar-sun" x={x} y={height - foot - sky - sun} width={step - 2} height={sun} />
          </g>
        );
      })}
      <line className="chart-base" x1={0} x2={width} y1={height - foot} y2={height - foot} />
      {[6, 12, 18].map((hour) => (
        <text key={hour} x={hour * step} y={height - 3} textAnchor="middle">
          {hour} h
        </text>
      ))}
      <text x={2} y={11}>
        <tspan className="key-sun">■</tspan> {words.sun} <tspan className="key-sky">■</tspan> {words.sky}
      </text>
    </svg>
  );
}
