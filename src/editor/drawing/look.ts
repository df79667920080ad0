/** The eye through which a hand draws, as far as drawing needs it. */
import type { Vec3 } from '../../geometry/vec.ts';
import type { Sight } from '../pull/sight.ts';

/** CSS pixels from the top left corner of the picture. */
export type Xy = readonly [x: number, y: number];

export interface Look {
  /** Unit vector from the middle of the picture to the eye. */
  readonly facing: Vec3;
  readonly sightAt: (x: number, y: number) => Sight;
  /** Pixels, and metres before the eye; null behind it. */
  readonly project: (point: Vec3) => readonly [x: number, y: number, depthM: number] | null;
}

export const apartPx = ([ax, ay]: Xy, [bx, by]: Xy): number => Math.hypot(ax - bx, ay - by);

/** Where a point of the world is seen. Throws when it lies behind the eye. */
export function seenAt(look: Look, point: Vec3): Xy {
  const pixel = look.project(point);
  if (pixel === null) throw new Error(`seenAt: the point must lie before the eye, got ${point.join(', ')}`);
  return [pixel[0], pixel[1]];
}
