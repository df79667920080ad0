/** Visible text of the choice between gentle, balanced and bold. */
import { formatDecimal } from '../../../geometry/measure.ts';
import type { Boldness, ChoicePoint } from '../../../plan/choice.ts';

const names: Readonly<Record<Boldness, string>> = { gentle: 'Gentle', balanced: 'Balanced', bold: 'Bold' };
const figs = (point: ChoicePoint): string => formatDecimal(point.ripeFigs, 1);
const light = (point: ChoicePoint): string => `${formatDecimal(100 * point.meanLight, 0)} %`;
const shoots = (n: number): string => (n === 1 ? '1 shoot' : `${n} shoots`);
const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

export const choiceWords = {
  title: 'How much to take',
  names,
  option: (boldness: Boldness, points: readonly ChoicePoint[]) => {
    const point = points.find(({ reads }) => reads.includes(boldness));
    return point === undefined ? names[boldness] : `${names[boldness]} ${point.shoots}`;
  },
  unit: 'Plan, and the shoots it keeps',
  /** Plans that come to the same set. */
  same: (points: readonly ChoicePoint[]): string | null => {
    const alike = points.find(({ reads }) => reads.length > 1);
    if (alike === undefined) return null;
    const words = listed([...alike.reads]);
    return `${words.charAt(0).toUpperCase()}${words.slice(1)} come to the same ${shoots(alike.shoots)} here.`;
  },
  meaning:
    'Gentle takes as little, bold as much as may be, for at least 95 % of the figs of the balanced plan. From a quick look, with the shoots as strong as the balanced plan makes them. Hollow: more on a limb than it carries well.',
  none: 'There is nothing to choose between on this day.',
  figs: 'Ripe figs',
  light: 'Mean light, % of open sky',
  slider: 'Read the curve',
  /** On the scale of a curve: whole numbers where they tell its ends apart well. */
  figure: (value: number, range: number) => formatDecimal(value, range < 4 ? 1 : 0),
  shoots,
  picture: (points: readonly ChoicePoint[]) => {
    const [fewest, most] = [points[0], points.at(-1)];
    if (fewest === undefined || most === undefined) return '';
    const told = (point: ChoicePoint) => `${figs(point)} figs and ${light(point)} of open sky`;
    return `Two curves against shoots kept: with ${shoots(fewest.shoots)} ${told(fewest)}, with ${shoots(most.shoots)} ${told(most)}. The table below has every point.`;
  },
  read: (point: ChoicePoint) =>
    `${shoots(point.shoots)} kept: ${figs(point)} ripe figs, mean light ${light(point)}, ${point.deepShade} in deep shade${
      point.withinLimits ? '' : '; more than the limbs carry well'
    }`,
  table: 'The curve as a table',
  columns: ['Shoots kept', 'Ripe figs', 'Mean light', 'In deep shade', 'Plan'],
  row: (point: ChoicePoint) => [
    `${point.shoots}${point.withinLimits ? '' : ' (too many)'}`,
    figs(point),
    light(point),
    `${point.deepShade}`,
    listed(point.reads.map((name) => names[name])),
  ],
} as const;
