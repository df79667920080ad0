/** A square lattice of parallel rays across one direction. */
import { dot, type Vec3 } from '../../../geometry/vec.ts';
import { type BeamFrame, beamFrame } from '../receiverGrid.ts';

/**
 * Ray (column, row) meets the plane across the direction at (right + column x spacing, top + row x spacing). Of the endless
 * lattice so many columns are followed, from `left` on, and so many rows, from `low` on, by their numbers: where a ray lies
 * does not depend on how much of the lattice is followed. Ray k of these is in column left + k % columns, row by row.
 */
export interface Lattice {
  readonly frame: BeamFrame;
  readonly spacingM: number;
  readonly right: number;
  readonly top: number;
  readonly left: number;
  readonly low: number;
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

/** In shares of the spacing: far above the rounding of a box's edge, so that no ray on the edge of a thing is left out. */
const margin = 1e-6;

/** Whole numbers within two places, as the first and how many. */
function within(from: number, to: number): readonly [number, number] {
  const first = Math.ceil(from - margin);
  return [first, Math.max(0, Math.floor(to + margin) - first + 1)];
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
  const [boxLeft, boxRight] = reach(box, frame.right);
  const [boxLow, boxHigh] = reach(box, frame.top);
  const [left, columns] = within(boxLeft / spacingM - shiftRight, boxRight / spacingM - shiftRight);
  const [low, rows] = within(boxLow / spacingM - shiftTop, boxHigh / spacingM - shiftTop);
  const [right, top] = [shiftRight * spacingM, shiftTop * spacingM];
  return { frame, spacingM, right, top, left, low, columns, rows };
}
