/** The cells of the sky: the parts whose light is traced as one. */
import { type Patch, patchRows, tregenzaPatches } from './patches.ts';

/** Diffuse light: 145 patches. */
export const skyPatches: readonly Patch[] = tregenzaPatches;

/**
 * Light thrown back by the ground: 18 patches below the level, mirror images of these three rows. The ground counts as
 * evenly bright, so that coarse patches lose nothing but evenness of the random rays.
 */
export const groundPatches: readonly Patch[] = patchRows([0, 20, 45, 90], [8, 6, 4]);

/**
 * Rows of the beam grid. Their edges lie at even steps of the sun's longitude along its yearly path, so each row holds the sun for
 * one twelfth of the year: rows are 5.9 degrees of declination high at the equinoxes and 0.8 at the solstices.
 */
export const beamRows = 12;
/** Columns of 10 degrees of hour angle (40 minutes), from midnight to midnight. */
export const beamColumns = 36;
export const beamColumnDeg = 360 / beamColumns;
/** Box in row r and column c is cell r * 36 + c. */
export const beamCells = beamRows * beamColumns;

/** Greatest declination of the grid, degrees; the sun's is 23.44 in this century. */
const tiltDeg = 23.45;
const sinTilt = Math.sin((tiltDeg * Math.PI) / 180);

/** Declination at a place in the rows, 0 (-23.45 degrees) to 12 (23.45). */
export function declinationAtRow(row: number): number {
  const longitude = (row / beamRows - 0.5) * Math.PI;
  return (Math.asin(sinTilt * Math.sin(longitude)) * 180) / Math.PI;
}

/** The place in the rows of a declination, 0 to 12. */
export function rowOfDeclination(declinationDeg: number): number {
  const s = Math.sin((declinationDeg * Math.PI) / 180) / sinTilt;
  return (Math.asin(Math.min(1, Math.max(-1, s))) / Math.PI + 0.5) * beamRows;
}

/** Hour angle at a place in the columns, 0 (-180 degrees) to 36 (180). */
export const hourAngleAtColumn = (column: number): number => column * beamColumnDeg - 180;
