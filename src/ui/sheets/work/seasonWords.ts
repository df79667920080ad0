/** Visible text about the pinch, the ways to renew the tree, how much is taken, and what stays. */
import { formatDecimal } from '../../../geometry/measure.ts';

const percent = (share: number): string => `${formatDecimal(100 * share, 0)} %`;

export const seasonWords = {
  pinch: (from: string, to: string) => `Pinch in early summer: ${from} to ${to}`,
  harvest: 'Ripe figs week by week',
  harvestPicture: 'Ripe figs week by week, not pinched and pinched; the table below has the figures.',
  without: 'not pinched',
  with: 'pinched',
  goodWeeks: 'warm, dry week',
  weekColumns: ['Week from', 'Not pinched', 'Pinched', 'Warm and dry'],
  yes: 'yes',
  no: 'no',
  renewal: 'Renew an old tree',
  renewalAsk: 'Work out the ways to renew it',
  renewalUnderWay: 'Working out the ways to renew it.',
  renewalNone:
    'There is no way to renew this tree: it has neither a strong sucker at its base nor three limbs that may go.',
  wait: 'No cut in this year: wait for the new wood.',
  amount: 'How much the ticked cuts take',
  amountNone: 'The ticked cuts take buds and green shoots alone: no wood, and no wound that matters.',
  shareTitle: 'Of what bears leaves',
  share: (share: number, warn: number, stop: number) =>
    `${percent(share)}: a warning from ${percent(warn)}, at most ${percent(stop)} in a year`,
  shareByDesign: (share: number) => `${percent(share)}: no limit, for this form is cut to stubs each winter`,
  woundsTitle: 'All wounds together',
  wounds: (share: number, warn: number) =>
    `${percent(share)} of the section of the trunk; severe from ${percent(warn)}`,
  woundsByDesign: (share: number) => `${percent(share)} of the section of the trunk`,
  leafTitle: 'Leaf area after the cuts',
  stays: (n: number) => (n === 1 ? 'What stays: 1 shoot' : `What stays: ${n} shoots`),
  staysMeaning: 'Light over the season, with the ticked cuts made. Pick one to mark it.',
  staysLight: (share: number) => percent(share),
} as const;
