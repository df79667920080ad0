/** The day whose sun path is drawn round the tree, and the hour at which it lights the stage. */
import { useId } from 'react';
import { DateField } from '../../fields/DateField.tsx';
import { riseAndSet } from '../../stage/sunView.ts';
import { useFile, useView, useWorkbench } from '../../state/workbench.ts';
import { lightWords as words } from './words.ts';

export function SunChooser() {
  const { view } = useWorkbench();
  const file = useFile();
  const { sunDate, sunHour } = useView();
  const date = sunDate ?? file.season.sketchedOn;
  const times = riseAndSet(date, file.site);
  const id = useId();
  return (
    <details>
      <summary>{words.sun}</summary>
      <div className="sun">
        <DateField
          label={words.sunDate}
          value={date}
          onChoose={(chosen) => view.setState({ sunDate: chosen })}
        />
        <div className="field is-grown">
          <label htmlFor={id} className="field-label">
            {words.sunHour} {sunHour} h, sun time
          </label>
          <input
            id={id}
            type="range"
            min={4}
            max={20}
            step={1}
            value={sunHour}
            aria-valuetext={`${sunHour} hours, sun time`}
            onChange={(event) => view.setState({ sunHour: Number(event.target.value) })}
          />
        </div>
        {times === null ? null : <p className="quiet small">{words.riseAndSet(times[0], times[1])}</p>}
      </div>
    </details>
  );
}
