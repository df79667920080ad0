/** Whether the figures of the weather can be. */
import type { TreeFile } from '../treeFile.ts';
import type { Finding } from './finding.ts';

type Climate = TreeFile['site']['climate'];

const hasDarkYear = (rows: readonly (readonly number[])[]): boolean =>
  rows.every((row) => row.every((w) => w === 0));

function findBadHours({ hourly }: Climate): Finding | null {
  if (hourly === undefined) return null;
  for (const [month, row] of hourly.diffuseWM2.entries()) {
    const hour = row.findIndex((diffuse, h) => diffuse > (hourly.globalWM2[month]?.[h] as number) + 0.1);
    if (hour < 0) continue;
    return {
      place: ['site', 'climate', 'hourly', 'diffuseWM2', month, hour],
      reason: `More light comes from the sky (${row[hour]} W/m²) than from sky and sun together (${hourly.globalWM2[month]?.[hour]} W/m²) in hour ${hour} of month ${month + 1}. Perhaps the two tables were exchanged.`,
    };
  }
  if (!hasDarkYear(hourly.globalWM2)) return null;
  return {
    place: ['site', 'climate', 'hourly', 'globalWM2'],
    reason: 'No hour of the year has any light. Leave out "hourly" where it is not known.',
  };
}

export function findBadClimate(climate: Climate): Finding | null {
  const { meanC, minC, sunshineH, clearness } = climate;
  const month = minC.findIndex((c, i) => c > (meanC[i] as number));
  if (month >= 0) {
    return {
      place: ['site', 'climate', 'minC', month],
      reason: `The mean of the nights (${minC[month]} °C) is warmer than the mean of the whole days (${meanC[month]} °C) in month ${month + 1}. Perhaps two rows were exchanged.`,
    };
  }
  if (sunshineH === undefined && clearness === undefined) {
    return {
      place: ['site', 'climate'],
      reason:
        'Nothing is said of the light. Give "sunshineH", the hours of bright sunshine a day, or "clearness", one figure a month.',
    };
  }
  return findBadHours(climate);
}
