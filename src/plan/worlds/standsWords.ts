/** How sure a cut and a plan are, in plain words. */
import { formatDecimal, formatLength, type Units } from '../../geometry/measure.ts';
import type { Cut } from '../cut.ts';
import { named } from '../words.ts';
import type { Confidence, Range, Rival, StandsIn } from './standsIn.ts';

const ofWorlds = (count: number, worlds: number): string => `${count} of ${worlds} plausible trees and years`;

/** Null where there is nothing to say: no worlds were asked for, or the grower has marked it. */
export function standsText(
  { standsIn, reasons }: Pick<Cut, 'standsIn' | 'reasons'>,
  confidence: Confidence | null,
  units: Units,
): string | null {
  if (standsIn !== null) {
    const { worlds, stands } = standsIn;
    return `Right in ${ofWorlds(stands, worlds)}.${rivalText(standsIn, confidence, units)}`;
  }
  if (confidence === null || reasons.some(({ rule }) => rule === 'pinned')) return null;
  return 'It goes on sight: no measurement of yours can be wrong about it.';
}

/** Only where which of the two goes is open. */
function rivalText({ worlds, rival }: StandsIn, confidence: Confidence | null, units: Units): string {
  const isOpen = rival !== null && rival.stands < (confidence?.yourCallBelowShare ?? 1) * worlds;
  if (!isOpen) return '';
  return ` Which one goes is open: ${rivalName(rival, units)} in its place is better in ${worlds - rival.stands} of ${worlds}.`;
}

const rivalName = ({ branch, atM }: Rival, units: Units): string =>
  atM === null ? named(branch) : `the bud ${formatLength(atM, units)} along ${named(branch)}`;

const signed = (count: number): string => {
  const text = formatDecimal(Math.abs(count), 1);
  return text === '0.0' ? text : `${count < 0 ? '−' : '+'}${text}`;
};

/** How far the figs lie apart; null where it is not known. */
export function rangeText({ worlds, figs }: Confidence): string | null {
  if (figs === null) return null;
  const between = ({ low, high }: Range): string => `${formatDecimal(low, 1)} to ${formatDecimal(high, 1)}`;
  const { plan, doNothing, difference, betterIn } = figs;
  return `Tried on ${worlds} plausible trees and years (errors of tape and eye, leaves, vigour, weather, how figs answer to light, feed): ${between(plan)} ripe figs with the plan, ${between(doNothing)} with nothing done; one tenth lie below and one tenth above. In the same tree and year the plan brings ${signed(difference.low)} to ${signed(difference.high)}, and no fewer than doing nothing in ${betterIn} of ${worlds}.`;
}

/** Before the cuts that are the grower's call. */
export const yourCallText = ({ worlds, yourCallBelowShare }: Confidence): string =>
  `Your call, and in no figure above: right in fewer than ${Math.ceil(yourCallBelowShare * worlds)} of ${worlds} plausible trees and years.`;
