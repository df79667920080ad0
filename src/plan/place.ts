/** How a grower finds a cut on the real tree. */
import { pointAt, tangentAt } from '../geometry/path.ts';
import { type Bud, type PlacedAxis, placeBud } from '../geometry/tree.ts';
import { dot, scale, sub, type Vec3 } from '../geometry/vec.ts';
import { bearingDeg, elevationDeg, wind } from '../geometry/world.ts';
import type { Place } from './cut.ts';
import type { RuleContext } from './ruleContext.ts';

/** Steeper than this, a face is called the upper or the lower side rather than by a wind, degrees; our choice. */
const upperFromDeg = 50;

/** Where a bud sits. */
export function placeOfBud(context: RuleContext, axis: PlacedAxis, bud: Bud): Place {
  const { point, outward } = placeBud(axis, bud);
  return placeOn(context, axis, bud.atM, point, outward, null);
}

/** Where an axis comes off: at its fork, or `atM` along it when only its outer part goes. */
export function placeOfCut(context: RuleContext, axis: PlacedAxis, atM: number): Place {
  const { parent } = axis;
  if (atM > 0 || parent === null) {
    return placeOn(context, axis, atM, pointAt(axis.path, atM), tangentAt(axis.path, atM), null);
  }
  const base = axis.path[0] as Vec3;
  return placeOn(context, parent, axis.axis.atM, base, tangentAt(axis.path, 0), axis.axis.name);
}

function placeOn(
  context: RuleContext,
  branch: PlacedAxis,
  fromForkM: number,
  point: Vec3,
  outward: Vec3,
  piece: string | null,
): Place {
  const foot = context.trunk.path[0] as Vec3;
  const out = acrossWood(outward, tangentAt(branch.path, fromForkM));
  const steep = elevationDeg(out);
  return {
    piece,
    branch: branch.axis.name,
    branchSide: wind(sideDeg(branch, foot)),
    fromForkM,
    forksFrom: branch.parent?.axis.name ?? null,
    heightM: point[1] - context.soilM,
    face: steep > upperFromDeg ? 'upper side' : steep < -upperFromDeg ? 'lower side' : wind(bearingDeg(out)),
    bearingDeg: bearingDeg(branch.parent === null ? out : sub(point, foot)),
  };
}

/** The part of a direction that is square to the wood; the direction itself when there is none. */
function acrossWood(outward: Vec3, along: Vec3): Vec3 {
  const across = sub(outward, scale(along, dot(outward, along)));
  return dot(across, across) < 1e-6 ? outward : across;
}

/** Bearing of a branch as a whole: from the foot of the trunk to its tip. */
const sideDeg = (branch: PlacedAxis, foot: Vec3): number =>
  bearingDeg(sub(branch.path[branch.path.length - 1] as Vec3, foot));
