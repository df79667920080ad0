/** Leaves of a shoot whose length alone is known: the growth of a bud (equations 7.3, 7.4, 7.7) turned round. */
import type { FigValues } from '../species/fig.ts';
import { largestMidribM, smallestMidribM } from './leafyShoot.ts';
import { internodeShare, shootForm, vigourOfInternode } from './shootForm.ts';

/** Vigours looked through: wider than buds are given, as a shoot of any length may have been measured. Our choice. */
const weakest = 0.05;
const strongest = 6;

/**
 * Leaves unfolded on a shoot that has this length at a heat sum. Error: a fig shoot of one length may have a third more or
 * fewer leaves, with its vigour and its light; count them where it matters.
 * @param lengthM metres, above 0
 * @param heatGdd8 since bud break; Infinity for a shoot that has done growing
 */
export function leavesOfLength(lengthM: number, heatGdd8: number, values: FigValues): number {
  if (!(lengthM > 0)) throw new Error(`leavesOfLength: the length must be above 0 m, got ${lengthM}`);
  let [low, high] = [Math.log(weakest), Math.log(strongest)];
  // Length never falls with vigour; where the number of leaves steps up it jumps.
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (shootForm(Math.exp(middle), heatGdd8, values).lengthM < lengthM) low = middle;
    else high = middle;
  }
  const [under, over] = [low, high].map((v) => shootForm(Math.exp(v), heatGdd8, values));
  if (under === undefined || over === undefined) throw new Error('leavesOfLength: two shoots are compared');
  return lengthM - under.lengthM < over.lengthM - lengthM ? under.leafCount : over.leafCount;
}

/**
 * Midrib of a full-grown leaf in the middle of a shoot that carries so many leaves, metres: that of the tree's balanced
 * shoot, longer on stronger ones, as on the shoot of a bud.
 */
export function midribOfShootM(lengthM: number, leafCount: number, values: FigValues): number {
  let shares = 0;
  for (let node = 1; node <= leafCount; node++) shares += internodeShare(node, leafCount);
  const vigour = vigourOfInternode(lengthM / shares, values);
  const wantedM = (values.leafMidribCm / 100) * vigour ** values.leafVigourExponent;
  return Math.min(largestMidribM, Math.max(smallestMidribM, wantedM));
}
