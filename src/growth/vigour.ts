/**
 * Shared vigour. All shoots of a tree live on one reserve, so fewer shoots are stronger.
 *
 * Wood of diameter D cm carries leaf area 10^(-0.71 + 2.145 log10 D) m2 (Asada 1989, apple); divided by
 * the leaf area of a balanced fig shoot (Caetano et al. 2005, 0.258 m2) that is the number of shoots it
 * can hold in balance, R. With N shoots on the tree and n on the limb:
 *
 *   v = limit(((R/N)^(1-w) (r/n)^w)^e) x thickness x position x uprightness x chance, within limits again
 *
 * w: part of the reserve that stays within the limb; e = 0.4 makes the rest grow about 0.3 longer when a
 * third of the shoots goes. The other factors are 1 on ordinary bearing wood: thickness is (d/1.5)^0.15 (d the
 * wood's diameter at the bud, cm); position runs from 1 - 0.25 at the base of the wood to 1 + 0.25 at its tip
 * (apical control), uprightness from 1 - 0.075 on level wood to 1 + 0.075 on upright wood. Dropped: roots and
 * pot, water, feed, last year's crop. Apple stands in for fig in R, so R may be wrong by half; the leaf area of
 * a balanced shoot is a setting that lets a grower fit it.
 */
import { tangentAt } from '../geometry/path.ts';
import { hashText, randomNormal } from '../geometry/random.ts';
import { type Bud, limbOf, type PlacedAxis, radiusAtM } from '../geometry/tree.ts';
import type { FigValues } from '../species/fig.ts';
import { isLeafy, type Member } from './owners.ts';

/** Shoots that wood of this diameter holds in balance; not a whole number. */
export function balancedShootCount(diameterM: number, values: FigValues): number {
  const logArea = values.woodLeafAreaLogIntercept + values.woodLeafAreaLogSlope * Math.log10(diameterM * 100);
  return 10 ** logArea / values.balancedShootLeafAreaM2;
}

/** How the reserve is shared: the ratio of shoots in balance to shoots that grow, on the tree and on each limb. */
interface Sharing {
  readonly treeRatio: number;
  /** By id of the limb's first axis; for shoots straight from the trunk there is none. */
  readonly limbRatio: ReadonlyMap<string, number>;
}

/** @param notSharing ids of axes and buds that grow but are not counted */
export function shareReserve(
  members: readonly Member[],
  placed: ReadonlyMap<string, PlacedAxis>,
  notSharing: ReadonlySet<string>,
  values: FigValues,
): Sharing {
  const skipped = new Set<number>();
  const onLimb = new Map<PlacedAxis, number>();
  let onTree = 0;
  let trunk: PlacedAxis | undefined;
  for (const { owner, parent, axis, bud, gone } of members) {
    const wood = placed.get(axis.id) as PlacedAxis;
    if (wood.parent === null) trunk ??= wood;
    if (gone || skipped.has(parent) || notSharing.has(bud === null ? axis.id : bud.id)) {
      skipped.add(owner);
      continue;
    }
    if (bud === null && !isLeafy(axis)) continue;
    onTree++;
    const limb = limbOf(wood);
    if (limb !== null) onLimb.set(limb, (onLimb.get(limb) ?? 0) + 1);
  }
  const limbRatio = new Map<string, number>();
  for (const [limb, count] of onLimb) {
    limbRatio.set(limb.axis.id, balancedShootCount(limb.axis.baseDiameterM, values) / count);
  }
  const reference = trunk === undefined ? 1 : balancedShootCount(trunk.axis.baseDiameterM, values);
  return { treeRatio: reference / Math.max(1, onTree), limbRatio };
}

/** Diameter of ordinary bearing wood, metres (our choice). */
const bearingWoodM = 0.015;

/** Vigour of the shoot of a bud; 1 is a balanced shoot. */
export function budVigour(
  wood: PlacedAxis,
  bud: Bud,
  sharing: Sharing,
  values: FigValues,
  seed: number,
): number {
  const limb = limbOf(wood);
  const limbRatio = (limb === null ? undefined : sharing.limbRatio.get(limb.axis.id)) ?? sharing.treeRatio;
  const w = values.vigourLimbShare;
  const within = (v: number): number => Math.min(values.vigourHighest, Math.max(values.vigourLowest, v));
  const shared = within((sharing.treeRatio ** (1 - w) * limbRatio ** w) ** values.vigourSharingExponent);
  const diameterM = 2 * radiusAtM(wood, bud.atM);
  const thickness = (diameterM / bearingWoodM) ** values.vigourThicknessExponent;
  const along = wood.lengthM > 0 ? Math.min(1, Math.max(0, bud.atM / wood.lengthM)) : 1;
  const position = 1 + values.vigourDistalGain * (2 * along - 1);
  const upright = Math.max(0, tangentAt(wood.path, bud.atM)[1]);
  const uprightness = 1 + values.vigourUprightGain * (upright - 0.5);
  const chance = Math.exp(values.vigourSpread * randomNormal(seed, hashText(bud.id)));
  return within(shared * thickness * position * uprightness * chance);
}
