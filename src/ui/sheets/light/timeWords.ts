/** Visible text of the time that is chosen on the Light sheet. */
import { formatDecimal } from '../../../geometry/measure.ts';
import { monthName } from '../../fields/dates.ts';
import type { ShownTime } from '../../state/timeWork.ts';

const hours = (from: number): string => `${from} to ${from + 1} h`;

export const timeWords = {
  all: 'All',
  by: 'Go through the season by',
  sliders: { month: 'Month', hour: 'Hour of the day' },
  kinds: { month: 'By month', hour: 'By hour of the day' },
  nameOf: (time: ShownTime | null): string =>
    time === null
      ? 'Whole season'
      : time.by === 'month'
        ? monthName(time.month)
        : `${hours(time.solarHour)}, sun time`,
  markOf: (time: ShownTime): string => (time.by === 'month' ? monthName(time.month) : String(time.solarHour)),
  /** In the sentence of the headline. */
  inHeadline: (time: ShownTime | null): string =>
    time === null
      ? 'over the season'
      : time.by === 'month'
        ? `in ${monthName(time.month)}`
        : `from ${hours(time.solarHour)}, sun time`,
  days: (from: string, to: string) => `${from} to ${to}`,
  openSky: (mol: number, time: ShownTime | null): string =>
    time?.by === 'hour'
      ? `Open sky gives ${formatDecimal(mol, 1)} mol m⁻² in that hour`
      : `Open sky gives ${formatDecimal(mol, 0)} mol m⁻² d⁻¹`,
  /** Head of the column of amounts. */
  amount: (time: ShownTime | null): string => (time?.by === 'hour' ? 'mol m⁻² h⁻¹' : 'mol m⁻² d⁻¹'),
} as const;
