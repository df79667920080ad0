/** Where on the wood a cut is marked. */
import { closestApproach } from '../../geometry/distance.ts';
import { distance, lerp, normalize, sub } from '../../geometry/vec.ts';
import type { Canopy, WoodStretch } from '../../growth/canopy.ts';
import type { DormantBud } from './dormantBuds.ts';
import type { CutMark, MarkKind } from './stageModel.ts';

/** How far out from the fork a removal is drawn, so that the mark is not inside the parent's wood. */
const clearOfForkRadii = 1.2;

function markOn(
  stretches: readonly WoodStretch[],
  atM: number,
): Pick<CutMark, 'point' | 'along' | 'radiusM'> | null {
  let left = atM;
  let last: WoodStretch | null = null;
  for (const stretch of stretches) {
    const lengthM = distance(stretch.from, stretch.to);
    if (lengthM === 0) continue;
    last = stretch;
    if (left <= lengthM) break;
    left -= lengthM;
  }
  if (last === null) return null;
  const t = Math.min(1, left / distance(last.from, last.to));
  return {
    point: lerp(last.from, last.to, t),
    along: normalize(sub(last.to, last.from)),
    radiusM: last.fromRadiusM + (last.toRadiusM - last.fromRadiusM) * t,
  };
}

/** The thickness of the parent's wood where `base` grows from it; 0 for the trunk. */
function parentRadiusM(canopy: Canopy, owner: number, base: WoodStretch): number {
  const parent = canopy.owners[owner]?.parent ?? 0;
  let nearest = { distanceM: Number.POSITIVE_INFINITY, radiusM: 0 };
  for (const stretch of canopy.wood) {
    if (stretch.owner !== parent) continue;
    const { from, to, fromRadiusM, toRadiusM } = stretch;
    const { distanceM, alongFirstM } = closestApproach([from, to], [base.from, base.from]);
    if (distanceM >= nearest.distanceM) continue;
    const t = alongFirstM / Math.max(1e-9, distance(from, to));
    nearest = { distanceM, radiusM: fromRadiusM + (toRadiusM - fromRadiusM) * t };
  }
  return nearest.radiusM;
}

/** What a mark is, but for how it is shown. */
export type CutPlace = Omit<CutMark, 'active' | 'isSelected'>;

/** What is marked: a cut, or a branch or bud that is to stay. */
export interface Marked {
  readonly id: string;
  readonly kind: MarkKind;
  readonly target: string;
  readonly atM: number;
}

/** The mark for a bud that has not grown into a shoot. */
export const budMark = (bud: DormantBud, cut: Pick<Marked, 'id' | 'kind'>, text: string): CutPlace => ({
  id: cut.id,
  text,
  kind: cut.kind,
  point: bud.point,
  along: bud.outward,
  radiusM: 0,
});

/**
 * The mark for a cut: at the base for what goes whole, `atM` along the branch for a tip.
 * Null when the canopy holds no wood of the cut's target.
 */
export function cutMark(canopy: Canopy, cut: Marked, text: string): CutPlace | null {
  const owner = canopy.owners.findIndex((o) => o !== null && o.id === cut.target);
  if (owner < 0) return null;
  const stretches = canopy.wood.filter((stretch) => stretch.owner === owner);
  const base = stretches[0];
  if (base === undefined) return null;
  const clearM = cut.kind === 'tip' ? 0 : clearOfForkRadii * parentRadiusM(canopy, owner, base);
  const found = markOn(stretches, Math.max(cut.kind === 'tip' ? cut.atM : 0, clearM));
  return found === null ? null : { id: cut.id, text, kind: cut.kind, ...found };
}
