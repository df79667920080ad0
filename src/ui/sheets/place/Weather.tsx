/** The weather in use and where it comes from; how to put other figures in its place. */
import { changeSource, guessWeather, tellSunBy } from '../../../editor/edits/climate.ts';
import { parMolPerMJ, parMolPerMJBand } from '../../../season/par.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { shortDay } from '../../fields/dates.ts';
import { quantities } from '../../fields/quantities.ts';
import { useFile, useUnits, useWorkbench } from '../../state/workbench.ts';
import { Frost } from './Frost.tsx';
import { MonthBars } from './MonthBars.tsx';
import { MonthTable } from './MonthTable.tsx';
import { monthRows } from './monthRows.ts';
import { WeatherFile } from './WeatherFile.tsx';
import { placeWords as words } from './words.ts';

type GuessChoice = keyof typeof words.guessKinds;

const guessChoices = (Object.keys(words.guessKinds) as GuessChoice[]).map((value) => ({
  value,
  text: words.guessKinds[value],
}));

export function Weather() {
  const { editor } = useWorkbench();
  const { climate, frost } = useFile().site;
  const units = useUnits();
  const guess = (kind: GuessChoice) => {
    if (kind !== 'none') editor.make((file) => guessWeather(file, kind));
  };
  return (
    <section>
      <h2 className="small-head">{words.climate}</h2>
      <p>
        {climate.hourly === undefined
          ? words.climateSource[climate.source]
          : words.fromWeatherFile(climate.hourly.source)}
      </p>
      <div className="charts">
        {monthRows(climate)
          .filter(({ row }) => row !== 'minC')
          .map(({ row, months, as }) => (
            <MonthBars
              key={row}
              title={words.monthTitles[row](quantities[as].unit(units))}
              values={months}
              quantity={quantities[as]}
            />
          ))}
      </div>
      <p className="quiet small">
        {frost === null
          ? words.noFrost
          : words.frost(shortDay(`2000-${frost.lastOfSpring}`), shortDay(`2000-${frost.firstOfAutumn}`))}
      </p>
      <p className="quiet small">{words.parFactor(parMolPerMJ, parMolPerMJBand)}</p>
      <details>
        <summary>{words.changeWeather}</summary>
        <div className="weather">
          <WeatherFile />
          <ChoiceField label={words.guess} value="none" options={guessChoices} onChoose={guess} />
          <Frost />
          <Figures />
          {climate.hourly === undefined ? null : <p className="small">{words.typingDropsHours}</p>}
          <MonthTable />
        </div>
      </details>
    </section>
  );
}

/** Where the figures are from, and by which of its two figures the sun is told. */
function Figures() {
  const { editor } = useWorkbench();
  const { climate } = useFile().site;
  return (
    <div className="form">
      <ChoiceField
        label={words.sourceAsked}
        value={climate.source}
        options={(['measured', 'published', 'guess'] as const).map((value) => ({
          value,
          text: words.sources[value],
        }))}
        onChoose={(source) => editor.make((file) => changeSource(file, source))}
      />
      <ChoiceField
        label={words.sunBy}
        value={climate.clearness === undefined ? 'sunshineH' : 'clearness'}
        options={(['sunshineH', 'clearness'] as const).map((value) => ({
          value,
          text: words.sunFigures[value],
        }))}
        onChoose={(row) => editor.make((file) => tellSunBy(file, row))}
      />
    </div>
  );
}
