/** Weather files of invented places, and what they were made from. */
import { random01 } from '../../../src/geometry/random.ts';
import { sunPosition } from '../../../src/light/sun.ts';
import { haurwitzWM2 } from '../../../src/season/clearSky.ts';

export interface MadePlace {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly zoneH: number;
  /** Of each month; a leap year's February has its 29th. */
  readonly years: readonly number[];
  /** The row as it is to stand in the file, or null to leave it out. */
  readonly change?: (fields: string[], month: number, day: number, hour: number) => string[] | null;
  readonly lineEnd?: string;
}

export interface MadeEpw {
  readonly text: string;
  /** Means of the days of each month, Wh m-2 by hour of true solar time. */
  readonly globalWM2: number[][];
  readonly diffuseWM2: number[][];
  readonly meanC: number[];
}

const samples = 6;
const table = (): number[][] => Array.from({ length: 12 }, () => new Array<number>(24).fill(0));
const daysIn = (year: number, month: number): number => new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
const add = (row: number[] | undefined, i: number, value: number): void => {
  if (row) row[i] = (row[i] ?? Number.NaN) + value;
};

/** Warmest at 15 o'clock; the height of summer late in January or in July. */
function temperatureC(latitudeDeg: number, month: number, day: number, hour: number): number {
  const turn = (2 * Math.PI * (month + day / 31 - 6.7)) / 12;
  const season = Math.sign(latitudeDeg) * 9.3 * Math.cos(turn);
  return 11.7 + season + 4.9 * Math.cos((2 * Math.PI * (hour - 15)) / 24);
}

const header = ({ latitudeDeg, longitudeDeg, zoneH }: MadePlace): string[] => [
  `LOCATION,"Low, and green",Made Up,XXX,invented,999999,${latitudeDeg},${longitudeDeg},${zoneH},137.0`,
  'DESIGN CONDITIONS,0',
  'TYPICAL/EXTREME PERIODS,0',
  'GROUND TEMPERATURES,0',
  'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
  'COMMENTS 1,"Every figure is made up, none was measured"',
  'COMMENTS 2',
  'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
];

/** Radiation of one hour from ten-minute samples of the sun, each put under its own solar hour. */
function hourLight(
  place: MadePlace,
  startMs: number,
  cloud: number,
  into: (hour: number, g: number, d: number) => void,
) {
  let [global, diffuse, direct] = [0, 0, 0];
  for (let i = 0; i < samples; i++) {
    const { altitudeDeg, hourAngleDeg } = sunPosition(startMs + ((i + 0.5) / samples) * 3_600_000, place);
    const g = (haurwitzWM2(altitudeDeg) * cloud) / samples;
    const d = g * Math.min(1, 1.13 - cloud);
    global += g;
    diffuse += d;
    if (g > 0) direct += (g - d) / Math.sin((altitudeDeg * Math.PI) / 180);
    into(Math.floor(((hourAngleDeg + 180) / 15) % 24), g, d);
  }
  return { global, diffuse, direct };
}

interface Row {
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly fields: readonly string[];
}
type Made = Omit<MadeEpw, 'text'> & { readonly rows: readonly Row[] };

const known = new Map<string, Made>();

/** The rows of a place as they are before any change. */
function rowsOf(place: MadePlace): Made {
  const [globalWM2, diffuseWM2] = [table(), table()];
  const meanC = new Array<number>(12).fill(0);
  const rows: Row[] = [];
  for (let month = 0; month < 12; month++) {
    const year = place.years[month % place.years.length] ?? 2003;
    const days = daysIn(year, month);
    for (let day = 1; day <= days; day++) {
      const cloud = 0.23 + 0.77 * random01(1703, month, day);
      for (let hour = 1; hour <= 24; hour++) {
        const startMs = Date.UTC(year, month, day, hour - 1) - place.zoneH * 3_600_000;
        const light = hourLight(place, startMs, cloud, (solarHour, g, d) => {
          add(globalWM2[month], solarHour, g / days);
          add(diffuseWM2[month], solarHour, d / days);
        });
        const celsius = temperatureC(place.latitudeDeg, month, day, hour);
        add(meanC, month, celsius / days / 24);
        const figures = [light.global, light.direct, light.diffuse].map((value) => value.toFixed(2));
        const fields = [year, month + 1, day, hour, 0, 'A7A7', celsius.toFixed(2), 9, 70, 100200, 0, 0, 300]
          .map(String)
          .concat(figures, new Array<string>(19).fill('999'));
        rows.push({ month, day, hour, fields });
      }
    }
  }
  return { globalWM2, diffuseWM2, meanC, rows };
}

export function madeEpw(place: MadePlace): MadeEpw {
  const { latitudeDeg, longitudeDeg, zoneH, years, change } = place;
  const key = JSON.stringify([latitudeDeg, longitudeDeg, zoneH, years]);
  const made = known.get(key) ?? rowsOf(place);
  known.set(key, made);
  const lines = made.rows.flatMap(({ fields, month, day, hour }) => {
    const row = change ? change([...fields], month, day, hour) : fields;
    return row === null ? [] : [row.join(',')];
  });
  return { ...made, text: [...header(place), ...lines, ''].join(place.lineEnd ?? '\n') };
}
