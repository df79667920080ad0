/**
 * What light can meet. A scene is a list of surfaces, each with an owner: the thing that would have
 * to be cut (or moved) to take it away. Owner 0 is what stays for good: ground, pot, walls.
 */
import type { Vec3 } from './vec.ts';

/** The owner of everything that no cut can remove. */
export const fixedOwner = 0;

export interface Optics {
  /** Share of PAR that passes through, 0 to 1. */
  readonly transmittance: number;
  /** Share of PAR thrown back, 0 to 1. With transmittance at most 1 in all. */
  readonly reflectance: number;
}

export const opaque: Optics = { transmittance: 0, reflectance: 0 };

interface Owned {
  /** Whole number, 0 for what is fixed. */
  readonly owner: number;
  readonly optics: Optics;
}

/** Any solid or sheet, as triangles: nine numbers each (three corners), metres. Both sides count. */
export interface Mesh extends Owned {
  readonly shape: 'mesh';
  readonly triangles: ArrayLike<number>;
}

/** A flat leaf: the outline's point (u, v) lies at origin + u * along + v * across. */
export interface Blade extends Owned {
  readonly shape: 'blade';
  readonly origin: Vec3;
  /** Not unit vectors: their lengths scale the outline, metres. */
  readonly along: Vec3;
  readonly across: Vec3;
  /** Closed polygon, at least three points [u, v], first not repeated. */
  readonly outline: readonly (readonly [number, number])[];
}

/** Tapered round wood: all points of the balls of radius fromRadiusM to toRadiusM strung from one end to the other. */
export interface Stem extends Owned {
  readonly shape: 'stem';
  readonly from: Vec3;
  readonly to: Vec3;
  readonly fromRadiusM: number;
  readonly toRadiusM: number;
}

/** A crown, a hedge or a fence, not known leaf by leaf: it dims light by its path inside. */
export interface Cloud extends Owned {
  readonly shape: 'cloud';
  /** Ellipsoid when left out. */
  readonly form?: 'ellipsoid' | 'box';
  readonly centre: Vec3;
  /** Half its size east-west, up-down and north-south before it is turned, metres. */
  readonly halfSizeM: Vec3;
  /** About the upright through its centre, clockwise seen from above; 0 when left out. */
  readonly turnedDeg?: number;
  /** Extinction per metre of path: leaf area density times the mean projection (0.5 for leaves at random). */
  readonly extinctionPerM: number;
}

export type Surface = Mesh | Blade | Stem | Cloud;

/** A place where light is asked for. */
export interface Receiver {
  readonly point: Vec3;
  /** Unit vector. */
  readonly normal: Vec3;
  /** One: a sensor that sees the half-space of its normal. Both: a leaf, lit from either side. */
  readonly sides: 'one' | 'both';
  /** Index of the surface it lies on, which never shades it; -1 for none. */
  readonly onSurface: number;
}
