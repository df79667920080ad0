/** The advice to pinch in plain words. */
import { formatDecimal } from '../geometry/measure.ts';
import { shortDay } from '../season/calendar.ts';
import type { PinchAdvice } from './pinchPlan.ts';

const ordinal = (n: number): string => {
  const isTeen = n % 100 >= 11 && n % 100 <= 13;
  const ending = isTeen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${ending}`;
};

const figs = (count: number): string => formatDecimal(count, 1);

export function pinchText({ atLeaf, laterals, when, with: pinched, without }: PinchAdvice): string {
  const after =
    laterals === 'keep one'
      ? 'Of the shoots that break below, keep one and rub off the others.'
      : 'Rub off the shoots that break below.';
  const peak =
    pinched.peakFrom === null || without.peakFrom === null || pinched.peakFrom === without.peakFrom
      ? ''
      : ` Most figs then ripen in the week from ${shortDay(pinched.peakFrom)}, not in that from ${shortDay(without.peakFrom)}.`;
  return (
    `Pinch out the tip of each shoot that stays, just above its ${ordinal(atLeaf)} leaf, ${shortDay(when.from)} to ${shortDay(when.to)}; leave shoots with fewer leaves alone. ` +
    `${after}${peak} About ${figs(pinched.ripeFigs)} figs ripen (${figs(without.ripeFigs)} without), ` +
    `${figs(pinched.inGoodWeeks)} of them in warm, dry weeks (${figs(without.inGoodWeeks)} without). ` +
    'That a pinch sets the figs below it at once is growers’ practice; no trial tells how surely it does.'
  );
}
