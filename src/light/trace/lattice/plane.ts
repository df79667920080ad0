/** The plane across a direction, measured in spacings from ray (0, 0), and what of it a thing covers. */
import type { Vec3 } from '../../../geometry/vec.ts';
import type { Lattice } from './lattice.ts';

export interface Plane {
  /** Axes over the spacing, and along the direction in metres. */
  readonly x: Vec3;
  readonly y: Vec3;
  readonly ahead: Vec3;
  readonly x0: number;
  readonly y0: number;
  readonly perM: number;
}

export function planeOf({ frame, spacingM, right, top }: Lattice): Plane {
  const perM = 1 / spacingM;
  const scaled = (v: Vec3): Vec3 => [v[0] * perM, v[1] * perM, v[2] * perM];
  const [x, y] = [scaled(frame.right), scaled(frame.top)];
  return { x, y, ahead: frame.ahead, x0: right * perM, y0: top * perM, perM };
}

/** The component along an axis of the vector that begins at an entry. */
export const along = (values: Float64Array, at: number, axis: Vec3): number =>
  (values[at] as number) * axis[0] +
  (values[at + 1] as number) * axis[1] +
  (values[at + 2] as number) * axis[2];

/** Columns `left` to `right` and rows `low` to `high`, all included. */
export class Cover {
  left = 0;
  right = 0;
  low = 0;
  high = 0;

  /** Columns of the lattice between two places; false when there are none. */
  setColumns(from: number, to: number, { left, columns }: Lattice): boolean {
    this.left = Math.max(left, Math.ceil(from));
    this.right = Math.min(left + columns - 1, Math.floor(to));
    return this.right >= this.left;
  }

  setRows(from: number, to: number, { low, rows }: Lattice): boolean {
    this.low = Math.max(low, Math.ceil(from));
    this.high = Math.min(low + rows - 1, Math.floor(to));
    return this.high >= this.low;
  }

  get rays(): number {
    return (this.right - this.left + 1) * (this.high - this.low + 1);
  }
}
