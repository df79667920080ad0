/** The weather of the place: guessed, typed month by month, or taken from a file of hours. */
import type { TreeFile } from '../../document/treeFile.ts';
import { dayOfYear } from '../../season/calendar.ts';
import { dayLengthH, dayOrbit } from '../../season/extraterrestrial.ts';
import { angstromPrescott, clearnessFromSunshine, sunshineFraction } from '../../season/globalRadiation.ts';
import { type ClimateKind, guessClimate } from '../../season/guessClimate.ts';
import type { Edited } from '../edit.ts';
import { checkedPlace } from './checkedPlace.ts';

type Climate = TreeFile['site']['climate'];
export type Months = Climate['meanC'];
export type MonthRow = 'meanC' | 'minC' | 'sunshineH' | 'clearness';

const withClimate = (file: TreeFile, climate: Climate, said: string): Edited =>
  checkedPlace({ ...file, site: { ...file.site, climate } }, said);

/** Puts the weather of a kind of climate at the tree's latitude in place of the figures there are. */
export function guessWeather(file: TreeFile, kind: ClimateKind): Edited {
  return withClimate(
    file,
    structuredClone(guessClimate(file.site.latitudeDeg, kind)) as Climate,
    'Guessed the weather',
  );
}

/** The nights keep their distance below days that were made colder than they, so that days can be typed first. */
function nightsBelow(before: Climate, meanC: Months): Months {
  return before.minC.map((minC, m) => {
    const [mean, was] = [meanC[m] as number, before.meanC[m] as number];
    return minC <= mean ? minC : Math.round(10 * (mean - (was - minC))) / 10;
  }) as Months;
}

/**
 * Whole rows of months, typed or pasted. Sunshine that is typed rules from then on: the hours of a weather file and the
 * other figure of the sun go.
 */
export function typeMonths(file: TreeFile, rows: Partial<Record<MonthRow, Months>>): Edited {
  const { climate } = file.site;
  const { sunshineH, clearness, hourly, ...rest } = climate;
  const saysSun = rows.sunshineH !== undefined || rows.clearness !== undefined;
  const sun = saysSun ? {} : sunOf({ sunshineH, clearness, hourly });
  const nights =
    rows.meanC === undefined || rows.minC !== undefined ? {} : { minC: nightsBelow(climate, rows.meanC) };
  return withClimate(file, { ...rest, ...sun, ...nights, ...rows, source: 'measured' }, 'Typed the weather');
}

type Sun = Pick<Climate, 'sunshineH' | 'clearness' | 'hourly'>;

/** What is known of the sun, without the empty places of what is not. */
const sunOf = (sun: Sun): Sun =>
  Object.fromEntries(Object.entries(sun).filter(([, figures]) => figures !== undefined));

/** How much of its day the sun shone in each month, as Angstrom and Prescott relate it to the clearness. */
function sunByMonth(file: TreeFile): { readonly sunshineH: Months; readonly clearness: Months } {
  const { latitudeDeg, climate } = file.site;
  const { a, b } = angstromPrescott;
  const days = climate.meanC.map((_, m) => {
    const middle = `2001-${String(m + 1).padStart(2, '0')}-15`;
    const longH = dayLengthH(dayOrbit(latitudeDeg, dayOfYear(middle)).sunsetRad);
    const clear =
      climate.clearness?.[m] ?? clearnessFromSunshine(sunshineFraction(climate.sunshineH?.[m] ?? 0, longH));
    return { clear, sunshineH: longH * Math.min(1, Math.max(0, (clear - a) / b)) };
  });
  return {
    sunshineH: days.map((day) => Math.round(10 * day.sunshineH) / 10) as Months,
    clearness: days.map((day) => Math.round(100 * day.clear) / 100) as Months,
  };
}

/** Tells the sun by its hours or by the clearness: the figures there are, said the other way. */
export function tellSunBy(file: TreeFile, row: 'sunshineH' | 'clearness'): Edited {
  const { sunshineH: _, clearness: __, ...rest } = file.site.climate;
  const climate = { ...rest, [row]: sunByMonth(file)[row] };
  return withClimate(file, climate, row === 'sunshineH' ? 'Sun by its hours' : 'Sun by the clearness');
}

/** Where the grower has the figures from. */
export function changeSource(file: TreeFile, source: Climate['source']): Edited {
  return withClimate(file, { ...file.site.climate, source }, 'Said where the weather is from');
}

/** Normal dates of the last frost of spring and the first of autumn; null where it does not freeze. */
export function changeFrost(file: TreeFile, frost: TreeFile['site']['frost']): Edited {
  return checkedPlace({ ...file, site: { ...file.site, frost } }, 'Changed the dates of frost');
}
