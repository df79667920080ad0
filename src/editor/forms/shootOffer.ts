/** This season's shoots, from a place on older wood. */
import { type Bend, crookedPath, tenthMm } from '../../geometry/crookedPath.ts';
import { outwardAt, tangentAt } from '../../geometry/path.ts';
import { hashText, random01 } from '../../geometry/random.ts';
import type { AxisKind } from '../../geometry/tree.ts';
import { add, normalize, scale, type Vec3 } from '../../geometry/vec.ts';
import { bearingDeg, fromUprightDeg } from '../../geometry/world.ts';
import { baseDiameterM } from '../../growth/shootForm.ts';
import type { FigValues } from '../../species/fig.ts';
import type { NewWood, TreeInHand } from './treeInHand.ts';

export interface ShootPlan {
  readonly id: string;
  readonly name: string;
  readonly kind?: AxisKind;
  readonly woodId: string;
  readonly atM: number;
  readonly aroundDeg: number;
  readonly lengthM: number;
  readonly grownIn: number;
  /** 0 goes on along the wood, 1 leaves it at 45 degrees. */
  readonly lean: number;
  readonly leafCount: number;
  readonly midribM: number;
  readonly source: 'measured' | 'estimated';
}

/** Shoots turn up towards the light; each try goes a little otherwise, so that one of them stands clear of other wood. */
export function shootOffer(
  tree: TreeInHand,
  plan: ShootPlan,
  values: FigValues,
  seed: number,
): (attempt: number) => NewWood {
  const word = hashText(plan.id);
  const { path } = tree.standing(plan.woodId);
  const outward = outwardAt(path, plan.atM, plan.aroundDeg);
  const along = tangentAt(path, plan.atM);
  return (attempt) => {
    const chance = (n: number, from: number) => from + (1 - from) * random01(seed, word, attempt, n);
    const nudge = scale([chance(5, -1), chance(6, -0.3), chance(7, -1)], 0.05 + attempt * 0.012);
    const start: Vec3 = normalize(add(add(along, scale(outward, plan.lean)), add([0, 0.35, 0], nudge)));
    const uprightDeg = Math.min(fromUprightDeg(start), 96);
    const tipUprightDeg = uprightDeg * (0.3 + 0.3 * random01(seed, word, 8));
    const { lengthM } = plan;
    const bend = {
      bearingDeg: bearingDeg(start),
      uprightDeg,
      tipUprightDeg,
      lengthM,
      stretches: 5,
      strayDeg: 5,
    };
    return shootWood(plan, bend, values, seed, word, attempt);
  };
}

/** A shoot that takes a given course. */
export function shootWood(
  plan: ShootPlan,
  bend: Bend,
  values: FigValues,
  seed: number,
  ...words: number[]
): NewWood {
  const thickM = baseDiameterM(plan.lengthM, values);
  return {
    id: plan.id,
    name: plan.name,
    kind: plan.kind ?? 'shoot',
    parentId: plan.woodId,
    atM: plan.atM,
    path: crookedPath(bend, seed, ...words),
    baseDiameterM: tenthMm(thickM),
    tipDiameterM: tenthMm(Math.min(0.005, 0.7 * thickM)),
    grownIn: plan.grownIn,
    foliage:
      plan.leafCount === 0
        ? null
        : { count: plan.leafCount, midribM: Math.round(1000 * plan.midribM) / 1000, source: plan.source },
  };
}
