/** The directions that are traced, and what each stands for. */
import type { Vec3 } from '../geometry/vec.ts';
import type { Horizon } from './sky/horizon.ts';

/**
 * A cell is a part of the sky that carries energy as one: a patch of the sky for diffuse light, a box of
 * declination and hour angle for the beam, a patch of ground below the level for light thrown back.
 * The tracer takes one direction in each cell, at random within it, per wave.
 */
export type CellKind = 'sky' | 'beam' | 'ground';

export interface Direction {
  /** Unit vector towards the light. */
  readonly toSky: Vec3;
  readonly kind: CellKind;
  /** Index of its cell among the cells of its kind. */
  readonly cell: number;
  /** Pose in which a pot that is turned was traced along it, drawn by chance, each as likely; none for one that is not. */
  readonly pose?: number;
  /** Of a direction that brings light which a patch of a wall throws back: rays that do not meet that patch bring nothing. */
  readonly thrownBy?: ThrownBy;
  /** Of rays that come down in a zone of the ground: it is as bright as what reaches the patch that stands for it. */
  readonly onGround?: { readonly patch: number; readonly faces: FaceLight };
}

export interface ThrownBy {
  /** Number of the patch in `faces`. */
  readonly patch: number;
  readonly reflectance: number;
  /** That the direction stands for: of its cell of sky or ground, times the patches it was chosen from. */
  readonly solidAngleSr: number;
  /** One and the same for all directions of a wave. */
  readonly faces: FaceLight;
}

/** What each patch gets from each direction of a wave: entry d * patchCount + patch, cosine times share let through. */
export interface FaceLight {
  readonly patchCount: number;
  readonly directions: readonly Direction[];
  readonly received: Float64Array;
  /** Of each patch; NaN for the ground, whose reflectance is in the light. */
  readonly reflectance: Float64Array;
  /** Entry p * patchCount + q: what patch q sends patch p, were it lit by 1 and threw all of it back; null where none sends another. */
  readonly between: Float64Array | null;
}

/**
 * Light for a period, cell by cell, index as in `Direction.cell`. Radiance times solid angle, that is: what a sensor
 * turned straight at the cell receives from it, mol PAR m-2 d-1 (mean of the period's days). Sky 145 patches, beam
 * 12 x 36 boxes (0 where the sun is never), ground 18 patches: see `sky/cells.ts`.
 *
 * A level sensor under open sky receives the sum of energy x max(0, upward part of the direction) over the directions of
 * a wave; its mean over waves is the open sky's closed sum below.
 */
export interface CellLight {
  readonly sky: Float64Array;
  readonly beam: Float64Array;
  readonly ground: Float64Array;
  /** What a level sensor under open sky receives, mol m-2 d-1: the closed sum, not the sampled one. */
  readonly openSkyParMolM2Day: number;
  readonly openBeamParMolM2Day: number;
  readonly openDiffuseParMolM2Day: number;
  /** What a level sensor gets below a cover with nothing else above it; the open sums where there is none. */
  readonly below?: { readonly beamParMolM2Day: number; readonly diffuseParMolM2Day: number };
  /** What hides the low sky, and how bright it is, mol m-2 d-1 sr-1. Cells hold the light there would be without it. */
  readonly hiding?: {
    readonly horizon: Horizon;
    readonly groundRadiance: number;
    readonly skylineRadiance: number;
  };
  /** Light of the days of each pose of a pot that is turned; in all they make up the whole. */
  readonly poses?: readonly CellLight[];
}
