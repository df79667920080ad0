/** The light of a normal day under open sky, hour by hour. */
import { dayLengthH } from '../../season/extraterrestrial.ts';
import type { IsoDate } from '../../season/site.ts';
import { dayLight, type SkySite } from './dayLight.ts';
import { daySteps } from './daySteps.ts';

export interface OpenSkyHour {
  /** Beginning of the hour in solar time, 0 to 23: the sun stands highest at 12. */
  readonly solarHour: number;
  /** On the level, mol m-2 in the hour. */
  readonly beamParMolM2: number;
  readonly diffuseParMolM2: number;
}

export interface OpenSkyDay {
  /** 24 entries. */
  readonly hours: readonly OpenSkyHour[];
  readonly parMolM2Day: number;
  readonly beamParMolM2Day: number;
  readonly diffuseParMolM2Day: number;
  readonly globalMJM2Day: number;
  /** From one crossing of the level by the sun's centre to the next; the day seen is about ten minutes longer. */
  readonly dayLengthH: number;
}

/** Open-sky light of a normal day (monthly means of weather), never of a single year's day. */
export function openSkyDay(site: SkySite, date: IsoDate): OpenSkyDay {
  const day = dayLight(site, date);
  const perHour = daySteps / 24;
  const hourSum = (steps: Float64Array, hour: number): number =>
    steps.subarray(hour * perHour, (hour + 1) * perHour).reduce((sum, value) => sum + value, 0);
  const hours = Array.from({ length: 24 }, (_, solarHour) => ({
    solarHour,
    beamParMolM2: hourSum(day.beamParMolM2, solarHour),
    diffuseParMolM2: hourSum(day.diffuseParMolM2, solarHour),
  }));
  const beamParMolM2Day = hours.reduce((sum, hour) => sum + hour.beamParMolM2, 0);
  const diffuseParMolM2Day = hours.reduce((sum, hour) => sum + hour.diffuseParMolM2, 0);
  return {
    hours,
    parMolM2Day: beamParMolM2Day + diffuseParMolM2Day,
    beamParMolM2Day,
    diffuseParMolM2Day,
    globalMJM2Day: day.globalMJM2,
    dayLengthH: dayLengthH((day.sunsetHourAngleDeg * Math.PI) / 180),
  };
}
