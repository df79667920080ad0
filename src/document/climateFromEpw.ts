/** The weather of a place from an hourly weather file. */
import { solarHours } from '../light/sky/solarHours.ts';
import { monthNames } from '../season/calendar.ts';
import { type EpwHours, type EpwPlace, type EpwRefusal } from '../season/epw/epwHours.ts';
import { tooManyMissing } from '../season/epw/fillGaps.ts';
import { readEpw } from '../season/epw/readEpw.ts';
import { slotsOfYear, yearOfWarmth } from '../season/epw/temperatures.ts';
import type { TreeFile } from './treeFile.ts';

type Climate = TreeFile['site']['climate'];

export interface EpwClimate {
  readonly ok: true;
  readonly climate: Climate;
  /** Of the file's own year, so a fortnight off a normal one either way; null where no hour was below 0. */
  readonly frost: TreeFile['site']['frost'];
  readonly place: EpwPlace;
  /** What the grower should know, in sentences. */
  readonly notes: readonly string[];
}

/** The largest share of a month's temperatures that may be missing: our choice, as for the light. */
const mostMissingShare = 0.05;

function refuseGap(month: number, share: number, what: string, hours: string): EpwRefusal {
  const name = monthNames[month] as string;
  const reason =
    share === 1
      ? `The file has no ${what} for ${name}. All twelve months are needed.`
      : `The ${what} is missing in ${Math.ceil(100 * share)} % of the ${hours} of ${name}. Up to 5 % is filled from the days around; this is too much.`;
  return { ok: false, reason, where: name };
}

/** Rounded to tenths, or hundredths in a dark month, such that the sum of the row stays: what one loses the next gets. */
function rounded(row: readonly number[]): number[] {
  const parts = row.reduce((sum, value) => sum + value, 0) < 100 ? 100 : 10;
  let rest = 0;
  return row.map((value) => {
    const wanted = value + rest;
    const kept = value === 0 ? 0 : Math.max(0, Math.round(parts * wanted) / parts);
    rest = wanted - kept;
    return kept;
  });
}

const tenth = (value: number): number => Math.round(10 * value) / 10;

/** The years of the rows: one, or how they are mixed. */
function yearsOf({ year }: EpwHours): string {
  const years = [...new Set(year)].filter((y) => y !== 0).sort((a, b) => a - b);
  const [first, last] = [years[0], years.at(-1)];
  return first === last ? String(first) : `months of years from ${first} to ${last}`;
}

function nameOf(hours: EpwHours): string {
  const { name, madeBy } = hours.place;
  const place = [name || 'Unnamed place', madeBy && `(${madeBy})`].filter((word) => word !== '').join(' ');
  return `${place}, ${yearsOf(hours)}`;
}

function climateOf(
  hours: EpwHours,
  light: Extract<ReturnType<typeof solarHours>, { filledShare: number }>,
): Climate {
  const { meanC, minC } = yearOfWarmth(hours);
  const globalWM2 = light.globalWM2.map(rounded);
  const diffuseWM2 = light.diffuseWM2.map((row, month) =>
    rounded(row).map((value, hour) => Math.min(value, globalWM2[month]?.[hour] as number)),
  );
  return {
    source: 'published',
    meanC: meanC.map(tenth) as Climate['meanC'],
    minC: minC.map(tenth) as Climate['minC'],
    clearness: light.clearness.map((k) =>
      Math.min(0.8, Math.max(0.15, Math.round(1000 * k) / 1000)),
    ) as NonNullable<Climate['clearness']>,
    hourly: { source: nameOf(hours), globalWM2, diffuseWM2 },
  };
}

/**
 * Monthly climate and mean hours of radiation from the text of an EPW file, or why it cannot be used and where. The light
 * of every month is kept within 0.1 %; the temperatures are means of the hours of the file's year.
 */
export function climateFromEpw(text: string): EpwClimate | EpwRefusal {
  const read = readEpw(text);
  if (!read.ok) return read;
  const { hours } = read;
  const light = solarHours(hours);
  if ('tooMuchMissing' in light)
    return refuseGap(
      light.tooMuchMissing.month,
      light.tooMuchMissing.share,
      'radiation',
      'hours of daylight',
    );
  const cold = tooManyMissing(hours.temperatureC, slotsOfYear(hours), mostMissingShare);
  if (cold !== null) return refuseGap(cold.month, cold.share, 'temperature', 'hours');
  const percent = (100 * light.filledShare).toFixed(1);
  const filled = `${percent} % of the hours of daylight had no radiation and were filled from the days around.`;
  const { frost } = yearOfWarmth(hours);
  return {
    ok: true,
    climate: climateOf(hours, light),
    frost,
    place: hours.place,
    notes: light.filledShare > 0 ? [filled] : [],
  };
}
