/** What must hold of a scene before rays are sent into it, so that no NaN comes out. */
import type { Receiver, Surface } from '../../geometry/surface.ts';
import type { Vec3 } from '../../geometry/vec.ts';

const unitTolerance = 1e-6;

function checkFinite(numbers: ArrayLike<number>, what: string): void {
  for (let i = 0; i < numbers.length; i++) {
    if (!Number.isFinite(numbers[i]))
      throw new Error(`checkScene: ${what} must be finite, got ${numbers[i]}`);
  }
}

function checkAtLeast0(value: number, what: string): void {
  if (!(value >= 0 && value < Infinity))
    throw new Error(`checkScene: ${what} must be 0 or more, got ${value}`);
}

/** Throws unless `v` is a unit vector. */
export function checkUnit(v: Vec3, what: string): void {
  const size = Math.hypot(v[0], v[1], v[2]);
  if (!(Math.abs(size - 1) < unitTolerance))
    throw new Error(`${what} must be a unit vector, got [${v.join(', ')}]`);
}

function checkShape(surface: Surface, where: string): void {
  switch (surface.shape) {
    case 'mesh':
      checkFinite(surface.triangles, `corners of ${where}`);
      if (surface.triangles.length % 9 !== 0) {
        throw new Error(
          `checkScene: ${where} needs nine numbers a triangle, got ${surface.triangles.length}`,
        );
      }
      return;
    case 'blade':
      checkFinite([...surface.origin, ...surface.along, ...surface.across], `frame of ${where}`);
      checkFinite(surface.outline.flat(), `outline of ${where}`);
      if (surface.outline.length < 3) {
        throw new Error(
          `checkScene: the outline of ${where} needs three points, got ${surface.outline.length}`,
        );
      }
      return;
    case 'stem':
      checkFinite([...surface.from, ...surface.to], `ends of ${where}`);
      checkAtLeast0(surface.fromRadiusM, `fromRadiusM of ${where}`);
      checkAtLeast0(surface.toRadiusM, `toRadiusM of ${where}`);
      return;
    case 'cloud':
      checkFinite(surface.centre, `centre of ${where}`);
      checkAtLeast0(surface.extinctionPerM, `extinctionPerM of ${where}`);
      for (const half of surface.halfSizeM) {
        if (!(half > 0 && half < Infinity)) {
          throw new Error(`checkScene: halfSizeM of ${where} must be above 0, got ${half}`);
        }
      }
  }
}

function checkSurface(surface: Surface, where: string): void {
  const { owner, optics } = surface;
  if (!Number.isInteger(owner) || owner < 0) {
    throw new Error(`checkScene: owner of ${where} must be a whole number from 0, got ${owner}`);
  }
  const { transmittance, reflectance } = optics;
  if (!(transmittance >= 0 && reflectance >= 0 && transmittance + reflectance <= 1 + unitTolerance)) {
    throw new Error(
      `checkScene: transmittance and reflectance of ${where} must be 0 or more and 1 at most together, got ${transmittance} and ${reflectance}`,
    );
  }
  checkShape(surface, where);
}

/**
 * Throws on anything not finite, owners below 0, optics that make light, normals that are no unit
 * vectors, and receivers that lie on a surface that is not there.
 */
export function checkScene(surfaces: readonly Surface[], receivers: readonly Receiver[]): void {
  surfaces.forEach((surface, i) => {
    checkSurface(surface, `surface ${i}`);
  });
  receivers.forEach((receiver, i) => {
    checkFinite(receiver.point, `point of receiver ${i}`);
    checkUnit(receiver.normal, `checkScene: normal of receiver ${i}`);
    const on = receiver.onSurface;
    if (!Number.isInteger(on) || on < -1 || on >= surfaces.length) {
      throw new Error(
        `checkScene: receiver ${i} must lie on a surface of the scene or on none (-1), got ${on}`,
      );
    }
  });
}
