/** This season's shoots in leaf, from a place on older wood. */
import { outwardAt, tangentAt } from '../../src/geometry/path.ts';
import { hashText } from '../../src/geometry/random.ts';
import type { AxisKind } from '../../src/geometry/tree.ts';
import { add, normalize, scale, type Vec3 } from '../../src/geometry/vec.ts';
import { bearingDeg, fromUprightDeg } from '../../src/geometry/world.ts';
import { between, crookedPath, mm, type NewWood, type TreeInHand } from './wood.ts';

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
  readonly internodeM: number;
  readonly midribM: number;
}

/**
 * Thickness of a fig shoot at its base. Published pairs, 18 mm with 100 cm and 23 mm with 150 cm, give
 * length in proportion to thickness^1.65.
 */
export const shootThicknessM = (lengthM: number): number => 0.018 * lengthM ** (1 / 1.65);

/** Leaves of a shoot: some short internodes at the base and the tip, the rest of the given length. */
const leafCount = (lengthM: number, internodeM: number): number => Math.round(3.4 + lengthM / internodeM);

/** Shoots turn up towards the light; each tries again a little otherwise until it stands clear of other wood. */
export function addShoot(tree: TreeInHand, plan: ShootPlan, seed: number): void {
  const word = hashText(plan.id);
  const { path } = tree.standing(plan.woodId);
  const outward = outwardAt(path, plan.atM, plan.aroundDeg);
  const along = tangentAt(path, plan.atM);
  tree.addClear(0.006, 80, (attempt): NewWood => {
    const chance = (n: number, from: number) => between(from, 1, seed, word, attempt, n);
    const nudge = scale([chance(5, -1), chance(6, -0.3), chance(7, -1)], 0.05 + attempt * 0.012);
    const start: Vec3 = normalize(add(add(along, scale(outward, plan.lean)), add([0, 0.35, 0], nudge)));
    const uprightDeg = Math.min(fromUprightDeg(start), 96);
    const tipUprightDeg = uprightDeg * between(0.3, 0.6, seed, word, 8);
    const bend = {
      bearingDeg: bearingDeg(start),
      uprightDeg,
      tipUprightDeg,
      lengthM: plan.lengthM,
      stretches: 5,
      strayDeg: 5,
    };
    const baseDiameterM = shootThicknessM(plan.lengthM);
    return {
      id: plan.id,
      name: plan.name,
      kind: plan.kind ?? 'shoot',
      parentId: plan.woodId,
      atM: plan.atM,
      path: crookedPath(bend, seed, word, attempt),
      baseDiameterM: mm(baseDiameterM),
      tipDiameterM: mm(Math.min(0.005, 0.7 * baseDiameterM)),
      grownIn: plan.grownIn,
      foliage: {
        count: leafCount(plan.lengthM, plan.internodeM),
        midribM: Math.round(1000 * plan.midribM) / 1000,
        source: 'measured',
      },
    };
  });
}
