/** Where the tree stands: its season, its sky, its weather, what is round it. */
import './place.css';
import { useMemo } from 'react';
import { openSkyDay } from '../../../light/sky/openSkyDay.ts';
import { type SeasonDates, seasonDates } from '../../../season/seasonDates.ts';
import { figValues } from '../../../species/fig.ts';
import { longDay, shortDay } from '../../fields/dates.ts';
import { useFile, useView } from '../../state/workbench.ts';
import { DayChart } from './DayChart.tsx';
import { Land } from './round/Land.tsx';
import { Round } from './round/Round.tsx';
import { SiteForm } from './SiteForm.tsx';
import { Weather } from './Weather.tsx';
import { placeWords as words } from './words.ts';

export function PlaceSheet() {
  const file = useFile();
  const { site, season, cultivar, settings } = file;
  const dates = useMemo(
    () =>
      seasonDates({
        site,
        budBreakOn: season.budBreakOn,
        values: figValues(settings),
        ripening: cultivar.ripening,
      }),
    [site, season, cultivar, settings],
  );
  const firstRipe = dates.firstRipeOn === null ? null : shortDay(dates.firstRipeOn);
  return (
    <>
      <p className="headline">{words.headline(firstRipe, shortDay(dates.ripeningEndsOn), dates.endedBy)}</p>
      <Round />
      <Land />
      <Season dates={dates} />
      <SkyOfTheDay />
      <Weather />
      <SiteForm />
    </>
  );
}

function Season({ dates }: { readonly dates: SeasonDates }) {
  const rows: readonly (readonly [string, string | null])[] = [
    [words.dateRows.budBreak, dates.budBreakOn],
    [words.dateRows.leafOut, dates.leafOutOn],
    [words.dateRows.firstFigs, dates.firstFigsOn],
    [words.dateRows.fullLeaf, dates.fullLeafOn],
    [words.dateRows.firstRipe, dates.firstRipeOn],
    [words.dateRows.end, dates.ripeningEndsOn],
  ];
  return (
    <section>
      <h2 className="small-head">{words.dates}</h2>
      <dl className="facts">
        {rows.map(([name, date]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{date === null ? words.never : shortDay(date)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function SkyOfTheDay() {
  const { site, season } = useFile();
  const { sunDate } = useView();
  const date = sunDate ?? season.sketchedOn;
  const day = useMemo(() => openSkyDay(site, date), [site, date]);
  const diffuseShare = day.parMolM2Day > 0 ? day.diffuseParMolM2Day / day.parMolM2Day : 0;
  return (
    <section>
      <h2 className="small-head">{words.day(longDay(date))}</h2>
      <p>{words.dayLine(day.parMolM2Day, diffuseShare, day.dayLengthH)}</p>
      <DayChart hours={day.hours} />
    </section>
  );
}
