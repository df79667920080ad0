/** Ways of renewal in plain words. */
import { formatDecimal, type Units } from '../geometry/measure.ts';
import type { RenewalWay, RenewalYear } from './renewal.ts';
import { placeText, type Viewpoint, whatText } from './words.ts';

const figs = (count: number): string => formatDecimal(count, 0);

export function renewalTitle({ way, sucker, when, ripeFigsNow }: RenewalWay): string {
  const what =
    way === 'to a sucker'
      ? `Renew from the base: ${sucker} becomes the tree. Leave it standing, whatever the list says, and keep two or three shoots of it. The crop of the first year is lost or late.`
      : 'Renew limb by limb: a third of the limbs each winter for three years. Where a limb comes off, keep the best-placed new shoot for the next one.';
  return `${what} Cuts from ${when.from} to ${when.to}, in later years on the same days. Now about ${figs(ripeFigsNow)} figs ripen in a year.`;
}

/** "Year 1: about 12 figs", or "12 to 19" while it is open how fast new wood bears. */
export function renewalYearText({ year, ripeFigs: { low, high } }: RenewalYear): string {
  const [from, to] = [figs(low), figs(high)];
  return `Year ${year}: ${from === to ? `about ${from}` : `${from} to ${to}`} ripe figs`;
}

export const renewalCutText = (
  cut: RenewalYear['cuts'][number],
  units: Units,
  viewpoint: Viewpoint | null,
): string => `${whatText(cut)}. ${placeText(cut, units, viewpoint)}`;
