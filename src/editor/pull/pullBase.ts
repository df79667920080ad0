/** A branch slid along the wood it grows from, turned round it, or made thicker. */
import type { TreeFile } from '../../document/treeFile.ts';
import { closestApproach } from '../../geometry/distance.ts';
import { outwardAt, type Path } from '../../geometry/path.ts';
import { add, cross, length, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { turnDeg } from '../../geometry/world.ts';
import type { Edited, TreeAxis } from '../edit.ts';
import { describe } from '../edits/describe.ts';
import { move } from '../edits/move.ts';
import { limits } from '../limits.ts';
import type { Sight } from './sight.ts';

/** A line of sight is followed so far, metres: past any tree. */
const sightM = 200;

/** @param parentPath in the frame of the sketch, as is `sight` */
export function slideAlong(
  file: TreeFile,
  axis: TreeAxis,
  parentId: string,
  parentPath: Path,
  sight: Sight,
): Edited {
  const seen: Path = [sight.from, add(sight.from, scale(sight.way, sightM))];
  return move(file, axis.id, parentId, closestApproach(parentPath, seen).alongFirstM);
}

/** How far a point is from a line of sight, metres. */
const offSight = (point: Vec3, { from, way }: Sight): number => length(cross(sub(point, from), way));

/** Of two places on the ring as near to the sight, that nearer to where it was: metres for a half turn. Our choice. */
const loyaltyM = 0.01;

/**
 * Where on a ring round the wood the hand points, degrees as `aroundDeg`.
 * @param radiusM of the ring
 * @param nowDeg where it was: a ring seen from its edge has two places under the hand
 */
export function aroundAt(
  parentPath: Path,
  atM: number,
  radiusM: number,
  nowDeg: number,
  centre: Vec3,
  sight: Sight,
): number {
  let [best, leastM] = [nowDeg, Number.POSITIVE_INFINITY];
  for (let aroundDeg = 0; aroundDeg < 360; aroundDeg++) {
    const place = add(centre, scale(outwardAt(parentPath, atM, aroundDeg), radiusM));
    const awayM = offSight(place, sight) + (loyaltyM * Math.abs(turnDeg(nowDeg, aroundDeg))) / 180;
    if (awayM < leastM) [best, leastM] = [aroundDeg, awayM];
  }
  return best;
}

/** The base made so many times as thick; the tip stays unless it would be the thicker one. */
export function thicken(file: TreeFile, axis: TreeAxis, times: number): Edited {
  const { min, max } = limits.baseDiameterM;
  const baseDiameterM = Math.min(max, Math.max(min, axis.baseDiameterM * times));
  return describe(file, axis.id, {
    baseDiameterM,
    tipDiameterM: Math.min(axis.tipDiameterM, baseDiameterM),
  });
}
