/** The spread of the light over the shoots, and its fall from the top of the crown to its foot. */
import { useMemo } from 'react';
import type { LightReport } from '../../../engine/reports.ts';
import { type Band, meanLight, spreadByHeight, spreadByLight } from '../../../engine/spread.ts';
import { heightsIn, isSameSpotlight, type Spotlight } from '../../state/spotlight.ts';
import { useUnits, useView, useWorkbench } from '../../state/workbench.ts';
import type { LightScale } from '../../theme/lightScale.ts';
import { countByClass, type ShootRow } from './figures.ts';
import { spreadWords as words } from './spreadWords.ts';

interface SpreadSectionProps {
  readonly rows: readonly ShootRow[];
  readonly scale: LightScale;
  readonly season: LightReport;
}

export function SpreadSection({ rows, scale, season }: SpreadSectionProps) {
  const units = useUnits();
  const heights = useMemo(() => heightsIn(season.shoots), [season]);
  return (
    <section className="look" aria-label={words.title}>
      <p className="quiet small">{words.tap}</p>
      <Bands
        title={words.overShoots}
        by="light"
        bands={spreadByLight(rows)}
        scale={scale}
        nameOf={({ from, to }) => words.between(from, to)}
      />
      <Bands
        title={words.overHeight}
        by="height"
        bands={spreadByHeight(rows, heights, units)}
        scale={scale}
        nameOf={({ from, to }) => words.heights(from, to, units)}
      />
    </section>
  );
}

/** The classes that hold any of the shoots, dark to light. */
const classesIn = (rows: readonly ShootRow[], scale: LightScale) =>
  countByClass(rows, scale).filter(({ count }) => count > 0);

interface BandsProps {
  readonly title: string;
  readonly by: Spotlight['by'];
  readonly bands: readonly Band<ShootRow>[];
  readonly scale: LightScale;
  readonly nameOf: (band: Band<ShootRow>) => string;
}

function Bands({ title, by, bands, scale, nameOf }: BandsProps) {
  const { view } = useWorkbench();
  const { spotlight } = useView();
  const most = Math.max(1, ...bands.map(({ rows }) => rows.length));
  return (
    <div>
      <h2 className="small-head">{title}</h2>
      <ul className="bands">
        {bands.map((band) => {
          const { from, to, rows } = band;
          const spot = { by, from, to };
          const isShown = isSameSpotlight(spotlight, spot);
          const mean = meanLight(rows);
          return (
            <li key={from}>
              <button
                type="button"
                className="band"
                aria-pressed={isShown}
                disabled={rows.length === 0}
                onClick={() => view.setState({ spotlight: isShown ? null : spot })}
              >
                <span className="band-name">{nameOf(band)}</span>
                <span className="band-bar" aria-hidden="true">
                  {classesIn(rows, scale).map(({ lightClass, count }) => (
                    <span
                      key={lightClass.name}
                      style={{ width: `${(100 * count) / most}%`, backgroundColor: lightClass.css }}
                    />
                  ))}
                </span>
                <span className="band-count">{words.count(rows.length)}</span>
                {by === 'height' ? <span className="band-mean">{words.mean(mean)}</span> : null}
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
