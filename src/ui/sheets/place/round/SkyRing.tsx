/** The ring of the winds, the sun's ways over it, and what of the sky a skyline or rising ground hides. */
import { useMemo } from 'react';
import type { TreeFile } from '../../../../document/treeFile.ts';
import { horizonHeight } from '../../../scene/horizonHeight.ts';
import { useView } from '../../../state/workbench.ts';
import { points, ringPx, skyPixelOf, widthPx } from './frame.ts';
import { sunArcs } from './sky.ts';
import { hiddenSky } from './skyline.ts';

const winds = ['N', 'E', 'S', 'W'] as const;

export function SkyRing({ file }: { readonly file: TreeFile }) {
  const { sunDate } = useView();
  const { latitudeDeg, longitudeDeg } = file.site;
  const heightDeg = horizonHeight(file.site);
  const date = sunDate ?? file.season.sketchedOn;
  const arcs = useMemo(() => sunArcs(date, { latitudeDeg, longitudeDeg }), [date, latitudeDeg, longitudeDeg]);
  return (
    <g className="place-ring" aria-hidden="true">
      {heightDeg === null ? null : <path className="place-hidden" d={hiddenSky(heightDeg)} />}
      <circle cx={widthPx / 2} cy={widthPx / 2} r={ringPx} />
      {winds.map((letter, i) => {
        const [x, y] = skyPixelOf(90 * i, -7);
        return (
          <text key={letter} className="place-wind" x={x} y={y}>
            {letter}
          </text>
        );
      })}
      {arcs.map((arc) => (
        <g key={arc.date} className={arc.isChosen ? 'place-arc is-chosen' : 'place-arc'}>
          <polyline points={points(arc.line)} />
          {arc.hours.map(({ hour, at: [x, y], labelAt }) => (
            <g key={hour}>
              <circle cx={x} cy={y} r={hour % 3 === 0 ? 2.5 : 1.5} />
              {hour % 3 === 0 ? (
                <text x={labelAt[0]} y={labelAt[1]}>
                  {hour}
                </text>
              ) : null}
            </g>
          ))}
          {arc.isChosen || arc.labelAt === null ? null : (
            <text className="place-date" x={arc.labelAt[0]} y={arc.labelAt[1]}>
              {arc.date}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}
