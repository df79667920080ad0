/** What must hold of a scene before rays are sent into it, so that no NaN comes out. */
import { type Outline, outlineBox } from '../../geometry/outline.ts';
import type { Blade, Receiver, Surface } from '../../geometry/surface.ts';
import { cross, type Vec3 } from '../../geometry/vec.ts';

const unitTolerance = 1e-6;

/** `what` and `where` come apart, so that no text is made for a scene that is sound. */
function checkFinite(numbers: ArrayLike<number>, what: string, where: number): void {
  for (let i = 0; i < numbers.length; i++) {
    if (!Number.isFinite(numbers[i])) {
      throw new Error(`checkScene: ${what} ${where} must be finite, got ${numbers[i]}`);
    }
  }
}

function checkAtLeast0(value: number, what: string, where: number): void {
  if (!(value >= 0 && value < Infinity)) {
    throw new Error(`checkScene: ${what} of surface ${where} must be 0 or more, got ${value}`);
  }
}

function checkSpans({ along, across }: Blade, where: number): void {
  if (!(Math.hypot(...cross(along, across)) > 0)) {
    throw new Error(
      `checkScene: along and across of surface ${where} must span a plane, got [${along.join(', ')}] and [${across.join(', ')}]`,
    );
  }
}

function checkOutline(outline: Outline, where: number): void {
  if (outline.length < 3) {
    throw new Error(`checkScene: the outline of surface ${where} needs three points, got ${outline.length}`);
  }
  for (const point of outline) checkFinite(point, 'outline of surface', where);
  const { minU, maxU, minV, maxV } = outlineBox(outline);
  if (!(maxU > minU && maxV > minV)) {
    throw new Error(
      `checkScene: the outline of surface ${where} must have an area, got ${maxU - minU} by ${maxV - minV}`,
    );
  }
}

/** Throws unless `v` is a unit vector. */
export function checkUnit(v: Vec3, what: string, where: number | '' = ''): void {
  const size = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
  if (!(Math.abs(size - 1) < unitTolerance)) {
    throw new Error(`${what}${where} must be a unit vector, got [${v.join(', ')}]`);
  }
}

function checkShape(surface: Surface, where: number): void {
  switch (surface.shape) {
    case 'mesh':
      checkFinite(surface.triangles, 'corners of surface', where);
      if (surface.triangles.length % 9 !== 0) {
        throw new Error(
          `checkScene: surface ${where} needs nine numbers a triangle, got ${surface.triangles.length}`,
        );
      }
      return;
    case 'blade':
      checkFinite(surface.origin, 'origin of surface', where);
      checkFinite(surface.along, 'frame of surface', where);
      checkFinite(surface.across, 'frame of surface', where);
      checkSpans(surface, where);
      return;
    case 'stem':
      checkFinite(surface.from, 'ends of surface', where);
      checkFinite(surface.to, 'ends of surface', where);
      checkAtLeast0(surface.fromRadiusM, 'fromRadiusM', where);
      checkAtLeast0(surface.toRadiusM, 'toRadiusM', where);
      return;
    case 'cloud':
      checkFinite(surface.centre, 'centre of surface', where);
      checkAtLeast0(surface.extinctionPerM, 'extinctionPerM', where);
      checkFinite([surface.turnedDeg ?? 0], 'turn of surface', where);
      for (const half of surface.halfSizeM) {
        if (!(half > 0 && half < Infinity)) {
          throw new Error(`checkScene: halfSizeM of surface ${where} must be above 0, got ${half}`);
        }
      }
  }
}

function checkSurface(surface: Surface, where: number): void {
  const { owner, optics } = surface;
  if (!Number.isInteger(owner) || owner < 0) {
    throw new Error(`checkScene: owner of surface ${where} must be a whole number from 0, got ${owner}`);
  }
  const { transmittance, reflectance } = optics;
  if (!(transmittance >= 0 && reflectance >= 0 && transmittance + reflectance <= 1 + unitTolerance)) {
    throw new Error(
      `checkScene: transmittance and reflectance of surface ${where} must be 0 or more and 1 at most together, got ${transmittance} and ${reflectance}`,
    );
  }
  checkShape(surface, where);
}

/**
 * Throws on anything not finite, owners below 0, optics that make light, blades and outlines without area, clouds without
 * size, normals that are no unit vectors, and receivers that lie on a surface that is not there. Triangles of a mesh that
 * have no area and stems without length (balls) are sound: the former cast no shade.
 */
export function checkScene(surfaces: readonly Surface[], receivers: readonly Receiver[]): void {
  const outlines = new Set<Outline>();
  surfaces.forEach((surface, i) => {
    checkSurface(surface, i);
    if (surface.shape !== 'blade' || outlines.has(surface.outline)) return;
    outlines.add(surface.outline);
    checkOutline(surface.outline, i);
  });
  receivers.forEach((receiver, i) => {
    checkFinite(receiver.point, 'point of receiver', i);
    checkUnit(receiver.normal, 'checkScene: normal of receiver ', i);
    const on = receiver.onSurface;
    if (!Number.isInteger(on) || on < -1 || on >= surfaces.length) {
      throw new Error(
        `checkScene: receiver ${i} must lie on a surface of the scene or on none (-1), got ${on}`,
      );
    }
  });
}
