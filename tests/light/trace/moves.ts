/** Scenes turned, mirrored, shifted and grown as a whole, for tests. */
import type { Receiver, Surface } from '../../../src/geometry/surface.ts';
import { scale, type Vec3 } from '../../../src/geometry/vec.ts';

/** Maps points; directions and frames too where the map keeps the origin. */
export type Move = (v: Vec3) => Vec3;

/**
 * A surface whose points are moved by `place` and whose edge vectors by `turn`, which is `place` without its shift. Half
 * sizes of clouds follow the axes: turn them by quarters or mirror them only.
 */
export function moved(surface: Surface, turn: Move, place: Move = turn): Surface {
  switch (surface.shape) {
    case 'mesh': {
      const triangles: number[] = [];
      for (let i = 0; i < surface.triangles.length; i += 3) {
        const [x, y, z] = [surface.triangles[i], surface.triangles[i + 1], surface.triangles[i + 2]];
        triangles.push(...place([x ?? 0, y ?? 0, z ?? 0]));
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
      const [x, y, z] = turn(surface.halfSizeM);
      return {
        ...surface,
        centre: place(surface.centre),
        halfSizeM: [Math.abs(x), Math.abs(y), Math.abs(z)],
      };
    }
  }
}

export const movedReceiver = (receiver: Receiver, turn: Move, place: Move = turn): Receiver => ({
  ...receiver,
  point: place(receiver.point),
  normal: turn(receiver.normal),
});

/** Every length times `factor`; clouds keep what passes through them. */
export function grown(surface: Surface, factor: number): Surface {
  const larger = moved(surface, (v) => scale(v, factor));
  if (larger.shape === 'stem') {
    return { ...larger, fromRadiusM: factor * larger.fromRadiusM, toRadiusM: factor * larger.toRadiusM };
  }
  return larger.shape === 'cloud' ? { ...larger, extinctionPerM: larger.extinctionPerM / factor } : larger;
}
