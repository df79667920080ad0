/** Visible text of the spread of the light on the Light sheet. */
import { formatDecimal, metresPer, type Units } from '../../../geometry/measure.ts';

const percent = (share: number): string => formatDecimal(share * 100, 0);

export const spreadWords = {
  title: 'Spread of the light',
  tap: 'Tap a bar to find its shoots on the tree; tap it again to see the whole tree.',
  overShoots: 'Shoots by share of open sky',
  overHeight: 'Shoots by height, with their mean light',
  between: (from: number, to: number) =>
    Number.isFinite(to) ? `${percent(from)} to ${percent(to)} %` : `${percent(from)} % and more`,
  heights(fromM: number, toM: number, units: Units): string {
    const unit = units === 'us' ? 'ft' : 'm';
    const write = (m: number): string => formatDecimal(m / metresPer[unit], 1);
    return `${write(fromM)} to ${write(toM)} ${unit}`;
  },
  count: (n: number) => (n === 1 ? '1 shoot' : `${n} shoots`),
  mean: (share: number | null) => (share === null ? '' : `${percent(share)} %`),
} as const;
