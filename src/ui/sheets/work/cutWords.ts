/** Visible text of one cut; what it is, where and why is worded by the plan. */
import { formatDecimal } from '../../../geometry/measure.ts';
import type { Gain } from '../../../plan/cut.ts';
import type { StandsIn } from '../../../plan/worlds/standsIn.ts';

const signed = (value: number, text: (size: number) => string): string =>
  value < 0 ? `−${text(-value)}` : `+${text(value)}`;

const decimal = (value: number): string => formatDecimal(value, 1);
const percent = (share: number): string => `${formatDecimal(100 * share, 0)} %`;
/** Gains that round to nothing are left out. */
const felt = (lights: Gain['lights']): Gain['lights'] => lights.filter(({ shareGain }) => shareGain >= 0.005);
const isNone = (figs: number): boolean => Math.abs(figs) < 0.05;

export const cutWords = {
  make: (n: number, piece: string) => `Make cut ${n}: ${piece}`,
  when: (from: string, to: string) => (from === to ? `on ${from}` : `${from} to ${to}`),
  gainInShort: (figs: number) => (isNone(figs) ? '± 0 figs' : `${signed(figs, decimal)} figs`),
  sure: ({ stands, worlds }: StandsIn) => `right in ${stands} of ${worlds}`,
  sureTitle: 'How sure',
  show: 'Show on the tree',
  where: 'Where',
  why: 'Why',
  brings: 'What it brings',
  light: 'More light for',
  overrule: 'If you keep it',
  whenTitle: 'When',
  gain(figs: number, fruitingWoodM: number, length: (m: number) => string): string {
    const crop = isNone(figs) ? 'No change in figs' : `${signed(figs, decimal)} ripe figs`;
    const wood =
      Math.abs(fruitingWoodM) < 0.005 ? '' : `, ${signed(fruitingWoodM, length)} of shoot in fruiting light`;
    return `${crop}${wood}.`;
  },
  lights(lights: Gain['lights']): string | null {
    const gains = felt(lights);
    if (gains.length === 0) return null;
    return `${gains.map(({ name, shareGain }) => `${name} (+${percent(shareGain)} of open sky)`).join('; ')}.`;
  },
  /** The price of overruling the plan, as the plan words it. */
  price: (text: string | null): string =>
    text === null
      ? 'The same number of figs this season.'
      : `${text.charAt(0).toUpperCase()}${text.slice(1)}`,
  whenInPass: (when: string, pass: string | null): string =>
    pass === null ? when : `${when.charAt(0).toUpperCase()}${when.slice(1)}. ${pass}`,
} as const;
