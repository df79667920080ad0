/** Why a plan ripens fewer figs than doing nothing: which steps of the work cost them. */
import { formatDecimal } from '../geometry/measure.ts';

/** Figs of the main crop that there are fewer after a step than before it. */
export interface FigsLost {
  readonly step: string;
  readonly figs: number;
}

/** Less than this is not told, figs; our choice. */
const worthTelling = 0.5;

/** The dearest first. */
export function figsLostBy(
  steps: readonly { readonly step: string; readonly ripeFigs: number }[],
): readonly FigsLost[] {
  return steps
    .map(({ step, ripeFigs }, i) => ({ step, figs: (steps[i - 1]?.ripeFigs ?? ripeFigs) - ripeFigs }))
    .filter(({ figs }) => figs >= worthTelling)
    .sort((a, b) => b.figs - a.figs);
}

/** What the grower gets for it, by step of the work. */
const forWhat: Readonly<Record<string, string>> = {
  'marked to go': 'what you marked to go',
  'dead and sick wood': 'dead and sick wood, which spreads or breaks',
  suckers: 'suckers, which draw on the roots below the crown',
  crossing: 'crossing and rubbing wood, which wounds itself',
  'inward and water sprouts': 'inward wood and water sprouts, which close the middle',
  'narrow forks': 'narrow forks, which tear',
  'below the fork': 'growth below the first fork, which gives way to a trunk',
  crowding: 'shoots thinned for room and spacing, which grow stronger for next year',
  tips: 'tips, for height and width',
};

/** "What costs figs: crossing and rubbing wood, which wounds itself (20); ..." */
export function whyFewer(lost: readonly FigsLost[]): string {
  if (lost.length === 0) return 'That is the price of limits kept for the tree’s sake.';
  const parts = lost.map(({ step, figs }) => `${forWhat[step] ?? step} (${formatDecimal(figs, 0)})`);
  return `What costs figs: ${parts.join('; ')}. It is work for the health and form of the tree, not for this year’s crop.`;
}
