/** A square lattice of parallel rays across one direction. */
import { dot, type Vec3 } from '../../../geometry/vec.ts';
import { type BeamFrame, beamFrame } from '../receiverGrid.ts';

/** Ray (column, row) meets the plane across the direction at (right + column x spacing, top + row x spacing). */
export interface Lattice {
  readonly frame: BeamFrame;
  readonly spacingM: number;
  readonly right: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
}

export interface Box {
  readonly low: Vec3;
  readonly high: Vec3;
}

/** Least and greatest place along an axis of the eight corners of a box. */
function reach({ low, high }: Box, axis: Vec3): readonly [number, number] {
  const middle = dot([(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2], axis);
  const half =
    ((high[0] - low[0]) * Math.abs(axis[0]) +
      (high[1] - low[1]) * Math.abs(axis[1]) +
      (high[2] - low[2]) * Math.abs(axis[2])) /
    2;
  return [middle - half, middle + half];
}

/**
 * Every ray that can meet the box. With the two shifts even over 0 to 1, any place of the plane is as likely as any other
 * to be met, so that spacing squared times the number of rays on a thing is its seen area in the mean.
 */
export function latticeOver(
  box: Box,
  toSky: Vec3,
  spacingM: number,
  shiftRight: number,
  shiftTop: number,
): Lattice {
  const frame = beamFrame(toSky);
  const [left, right] = reach(box, frame.right);
  const [bottom, top] = reach(box, frame.top);
  return {
    frame,
    spacingM,
    right: left + shiftRight * spacingM,
    top: bottom + shiftTop * spacingM,
    columns: Math.max(0, Math.floor((right - left) / spacingM - shiftRight) + 1),
    rows: Math.max(0, Math.floor((top - bottom) / spacingM - shiftTop) + 1),
  };
}
