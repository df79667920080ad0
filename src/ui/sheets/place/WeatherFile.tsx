/** A button that asks for an hourly weather file; such a file may be dropped anywhere on the page too. */
import { useRef } from 'react';
import { takeWeatherFromDevice } from '../../files/openWeather.ts';
import { useWorkbench } from '../../state/workbench.ts';
import { placeWords as words } from './words.ts';

export function WeatherFile() {
  const bench = useWorkbench();
  const picker = useRef<HTMLInputElement>(null);
  return (
    <div className="weather-file">
      <button type="button" className="button" onClick={() => picker.current?.click()}>
        {words.openWeather}
      </button>
      <p className="quiet small">{words.weatherFileHow}</p>
      <input
        ref={picker}
        type="file"
        accept=".epw"
        hidden
        aria-label={words.weatherFile}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file !== undefined) void takeWeatherFromDevice(bench, file);
          event.target.value = '';
        }}
      />
    </div>
  );
}
