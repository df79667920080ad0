/** Where the tree stands: its season, its sky, its weather, what is round it. */
import { useMemo } from 'react';
import { guessWeather } from '../../../editor/edits/place.ts';
import { openSkyDay } from '../../../light/sky/openSkyDay.ts';
import { type SeasonDates, seasonDates } from '../../../season/seasonDates.ts';
import { figValues } from '../../../species/fig.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { longDay, shortDay } from '../../fields/dates.ts';
import { useFile, useView, useWorkbench } from '../../state/workbench.ts';
import { DayChart } from './DayChart.tsx';
import { MonthBars } from './MonthBars.tsx';
import { Round } from './Round.tsx';
import { SiteForm } from './SiteForm.tsx';
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
      <Season dates={dates} />
      <SkyOfTheDay />
      <Weather />
      <SiteForm />
      <Round />
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

type GuessChoice = keyof typeof words.guessKinds;

const guessChoices = (Object.keys(words.guessKinds) as GuessChoice[]).map((value) => ({
  value,
  text: words.guessKinds[value],
}));

function Weather() {
  const { editor } = useWorkbench();
  const { climate, frost } = useFile().site;
  const guess = (kind: GuessChoice) => {
    if (kind !== 'none') editor.make((file) => guessWeather(file, kind));
  };
  return (
    <section>
      <h2 className="small-head">{words.climate}</h2>
      <div className="charts">
        <MonthBars title={words.temperature} values={climate.meanC} decimals={0} />
        {climate.sunshineH && <MonthBars title={words.sunshine} values={climate.sunshineH} decimals={0} />}
      </div>
      <p className="quiet small">
        {frost === null
          ? words.noFrost
          : words.frost(shortDay(`2001-${frost.lastOfSpring}`), shortDay(`2001-${frost.firstOfAutumn}`))}{' '}
        {words.climateSource[climate.source]}
      </p>
      <ChoiceField label={words.guess} value="none" options={guessChoices} onChoose={guess} />
    </section>
  );
}
