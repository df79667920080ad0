/** How the light at a node decides whether it sets a fig. */
import type { FigValues } from '../species/fig.ts';

/** Logistic odds at the ends of the curve, before they are stretched to 0 and 1: 1 in 20. */
const oddsAtEnds = Math.log(19);

/**
 * Share of figs that set, 0 to 1, at a share of open sky: none up to `none`, half at `half`, all from `full`.
 * Logistic between them, with its own steepness on either side of the half and stretched so that it reaches 0 and 1 there.
 * Source: shape and figures by analogy with apple, see the species' figures; no curve for fig was found in print.
 * Dropped: the effect of last year's light on this year's buds.
 */
export function lightResponse(share: number, none: number, half: number, full: number): number {
  if (share <= none) return 0;
  if (share >= full) return 1;
  const width = share < half ? half - none : full - half;
  const logistic = 1 / (1 + Math.exp((-oddsAtEnds * (share - half)) / width));
  return 0.5 + ((logistic - 0.5) * 0.5) / 0.45;
}

/** The curve with a species' figures. Throws when they do not rise from none over half to full. */
export function lightCurve(values: FigValues): (share: number) => number {
  const { fruitNoneBelowFraction: none, fruitHalfAtFraction: half, fruitFullFromFraction: full } = values;
  if (!(none < half && half < full)) {
    throw new Error(`lightCurve: light for no, half and all figs must rise, got ${none}, ${half}, ${full}`);
  }
  return (share) => lightResponse(share, none, half, full);
}
