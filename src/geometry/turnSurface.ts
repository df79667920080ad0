/** Surfaces turned about an upright line. */
import type { Surface } from './surface.ts';
import { add, sub, type Vec3 } from './vec.ts';
import { turnAboutUpright } from './world.ts';

/** The surface turned clockwise, seen from above, about the upright through `foot`. Throws on a turn that is none. */
export function turnSurface(surface: Surface, foot: Vec3, clockwiseDeg: number): Surface {
  if (!Number.isFinite(clockwiseDeg)) {
    throw new Error(`turnSurface: the turn must be finite, got ${clockwiseDeg}`);
  }
  const turn = (v: Vec3): Vec3 => turnAboutUpright(v, clockwiseDeg);
  const place = (v: Vec3): Vec3 => add(foot, turn(sub(v, foot)));
  switch (surface.shape) {
    case 'mesh': {
      const triangles = new Float64Array(surface.triangles.length);
      for (let i = 0; i < triangles.length; i += 3) {
        const corner = [0, 1, 2].map((k) => surface.triangles[i + k] as number);
        triangles.set(place(corner as unknown as Vec3), i);
      }
      return { ...surface, triangles };
    }
    case 'blade': {
      const { origin, along, across } = surface;
      return { ...surface, origin: place(origin), along: turn(along), across: turn(across) };
    }
    case 'stem':
      return { ...surface, from: place(surface.from), to: place(surface.to) };
    case 'cloud': {
      const turnedDeg = (surface.turnedDeg ?? 0) + clockwiseDeg;
      return { ...surface, centre: place(surface.centre), turnedDeg };
    }
  }
}
