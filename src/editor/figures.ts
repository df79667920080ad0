/** A branch in figures, as the trade speaks of it. */
import { pathLengthM } from '../geometry/path.ts';
import { sub, type Vec3 } from '../geometry/vec.ts';
import { bearingDeg, fromUprightDeg } from '../geometry/world.ts';
import type { TreeAxis } from './edit.ts';

export interface BranchFigures {
  readonly lengthM: number;
  /** Bearing of the straight line from base to tip; 0 for upright wood. */
  readonly bearingDeg: number;
  /** Angle of that line from upright. */
  readonly fromUprightDeg: number;
}

/** The straight line from base to tip, metres. */
export function chord(axis: Pick<TreeAxis, 'path'>): Vec3 {
  return sub(axis.path[axis.path.length - 1] as Vec3, axis.path[0] as Vec3);
}

export function branchFigures(axis: Pick<TreeAxis, 'path'>): BranchFigures {
  const line = chord(axis);
  const isUpright = Math.hypot(line[0], line[2]) < 1e-6;
  return {
    lengthM: pathLengthM(axis.path),
    bearingDeg: isUpright ? 0 : bearingDeg(line),
    fromUprightDeg: fromUprightDeg(line),
  };
}
