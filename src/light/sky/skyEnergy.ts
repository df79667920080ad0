/** How the light of the sky lies over its patches. */
import { bearingDeg } from '../../geometry/world.ts';
import { sunDirection } from '../sun.ts';
import { beamCells, beamColumns, declinationAtRow, hourAngleAtColumn, skyPatches } from './cells.ts';
import { type CieSkyType, cieRelativeLuminance } from './luminance.ts';
import type { Patch } from './patches.ts';

/**
 * Diffuse light from a sky of one brightness, from the CIE standard overcast or clear sky (types 1 and 12 of ISO 15469) or
 * from the CIE sky of that number.
 */
export type SkyKind = 'uniform' | 'overcast' | 'clear' | CieSkyType;

export interface SkyEnergyInput {
  readonly skyKind: SkyKind;
  /** On the level, mol m-2 d-1. */
  readonly openDiffuse: number;
  /** Its share in each box of the beam grid, where the sun then stands, in any unit. */
  readonly levelDiffuse: Float64Array;
  readonly latitudeDeg: number;
}

/** Skies that do not turn with the sun: their brightness has no part in the distance from it. */
const evenRound = (type: CieSkyType): boolean => type === 1 || type === 3 || type === 5;

const typeOf = (kind: SkyKind): CieSkyType => {
  if (kind === 'uniform') return 5;
  if (kind === 'overcast') return 1;
  return kind === 'clear' ? 12 : kind;
};

/**
 * Energy of each sky patch, scaled so that the level gets `openDiffuse` exactly. Skies with a bright ring round the sun are
 * laid out anew for the sun in the middle of every box of the beam grid (40 minutes, a twelfth of the year) and each is
 * given the diffuse light of its box; brightness is taken at 4 x 4 points of a patch. Dropped: the ring is counted twice in
 * part, since the diffuse share of PAR already hands some of it to the beam.
 */
export function skyEnergy({ skyKind, openDiffuse, levelDiffuse, latitudeDeg }: SkyEnergyInput): Float64Array {
  const type = typeOf(skyKind);
  if (evenRound(type)) return scaled(brightness(type, 0, 0), openDiffuse);
  const total = levelDiffuse.reduce((sum, value) => sum + value, 0);
  const energy = new Float64Array(skyPatches.length);
  for (let box = 0; box < beamCells; box++) {
    const level = levelDiffuse[box] as number;
    if (level === 0) continue;
    const declination = declinationAtRow(Math.floor(box / beamColumns) + 0.5);
    const toSun = sunDirection(latitudeDeg, declination, hourAngleAtColumn((box % beamColumns) + 0.5));
    const sunZenithDeg = (Math.acos(Math.min(1, Math.max(0, toSun[1]))) * 180) / Math.PI;
    const bright = brightness(type, sunZenithDeg, bearingDeg(toSun));
    scaled(bright, (openDiffuse * level) / total).forEach((value, i) => {
      energy[i] = (energy[i] as number) + value;
    });
  }
  return energy;
}

/** Mean brightness times solid angle of each patch, relative to the zenith. */
function brightness(type: CieSkyType, sunZenithDeg: number, sunBearingDeg: number): Float64Array {
  if (type === 5) return Float64Array.from(skyPatches, ({ solidAngleSr }) => solidAngleSr);
  return Float64Array.from(skyPatches, (patch) => {
    const mean = evenRound(type)
      ? meanOver(patch, 16, 1, (zenithDeg) => cieRelativeLuminance(type, zenithDeg, 0, 0))
      : meanOver(patch, 4, 4, (zenithDeg, bearing) =>
          cieRelativeLuminance(type, zenithDeg, bearing - sunBearingDeg, sunZenithDeg),
        );
    return patch.solidAngleSr * mean;
  });
}

/** Mean over the solid angle of a patch: rings of equal solid angle, each with evenly spread points. */
function meanOver(
  { lowDeg, highDeg, fromDeg, toDeg }: Patch,
  rings: number,
  points: number,
  at: (zenithDeg: number, bearingDeg: number) => number,
): number {
  const low = Math.sin((lowDeg * Math.PI) / 180);
  const high = Math.sin((highDeg * Math.PI) / 180);
  let sum = 0;
  for (let i = 0; i < rings; i++) {
    const zenithDeg = (Math.acos(low + ((high - low) * (i + 0.5)) / rings) * 180) / Math.PI;
    for (let k = 0; k < points; k++) {
      sum += at(zenithDeg, fromDeg + ((toDeg - fromDeg) * (k + 0.5)) / points);
    }
  }
  return sum / rings / points;
}

function scaled(bright: Float64Array, openDiffuse: number): Float64Array {
  const onLevel = skyPatches.reduce((sum, patch, i) => sum + (bright[i] as number) * meanSine(patch), 0);
  return bright.map((value) => (value * openDiffuse) / onLevel);
}

/** Mean sine of elevation over a patch: exact. */
const meanSine = (patch: Patch): number =>
  (Math.sin((patch.lowDeg * Math.PI) / 180) + Math.sin((patch.highDeg * Math.PI) / 180)) / 2;
