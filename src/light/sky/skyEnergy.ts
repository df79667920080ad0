/** How the light of the sky lies over its patches. */
import { bearingDeg } from '../../geometry/world.ts';
import { solarConstantWM2 } from '../../season/extraterrestrial.ts';
import { sunDirection } from '../sun.ts';
import { boxMeanSine, leastMeanSine } from './boxSine.ts';
import { beamCells, beamColumns, declinationAtRow, hourAngleAtColumn, skyPatches } from './cells.ts';
import { type CieSkyType, cieGradation, cieIndicatrix } from './luminance.ts';
import type { Patch } from './patches.ts';
import { type Luminance, type MeasuredSky, perezLuminance } from './perez.ts';

const rad = Math.PI / 180;

/**
 * Diffuse light from a sky of one brightness, from the CIE standard overcast or clear sky (types 1 and 12 of ISO 15469), from
 * the CIE sky of that number, or from a sky that goes with the light of each hour (Perez and others 1993).
 */
export type SkyKind = 'uniform' | 'overcast' | 'clear' | 'all-weather' | CieSkyType;

/** Sums over the days, box by box of the beam grid. */
export interface BoxLight {
  /** Diffuse PAR on the level, any unit. */
  readonly diffusePar: Float64Array;
  /** Radiation of all wavelengths on the level, MJ m-2. */
  readonly globalMJM2: Float64Array;
  readonly diffuseMJM2: Float64Array;
  /** Hours of sun above the level. */
  readonly sunH: Float64Array;
}

export interface SkyEnergyInput {
  readonly skyKind: SkyKind;
  /** On the level, mol m-2 d-1. */
  readonly openDiffuse: number;
  readonly boxes: BoxLight;
  readonly latitudeDeg: number;
}

/** Whether the sky is bright round the sun: then that ring is its own, else it goes with the beam. */
export const hasRing = (kind: SkyKind): boolean => kind === 'all-weather' || !evenRound(typeOf(kind));

/** Skies that do not turn with the sun: their brightness has no part in the distance from it. */
const evenRound = (type: CieSkyType): boolean => type === 1 || type === 3 || type === 5;

const typeOf = (kind: Exclude<SkyKind, 'all-weather'>): CieSkyType => {
  if (kind === 'uniform') return 5;
  if (kind === 'overcast') return 1;
  return kind === 'clear' ? 12 : kind;
};

/**
 * Energy of each sky patch, scaled so that the level gets `openDiffuse` exactly. Skies with a bright ring round the sun are
 * laid out anew for the sun in the middle of every box of the beam grid (40 minutes, a twelfth of the year) and each is
 * given the diffuse light of its box; brightness is taken at 4 x 4 points of a patch. An all-weather sky goes with the mean light of
 * its box, so days of different weather are mixed before, not after.
 */
export function skyEnergy({ skyKind, openDiffuse, boxes, latitudeDeg }: SkyEnergyInput): Float64Array {
  if (!hasRing(skyKind)) return scaled(evenBrightness(skyKind as 'uniform'), openDiffuse);
  const total = boxes.diffusePar.reduce((sum, value) => sum + value, 0);
  const energy = new Float64Array(skyPatches.length);
  for (let box = 0; box < beamCells; box++) {
    const level = boxes.diffusePar[box] as number;
    if (level === 0) continue;
    const [row, column] = [Math.floor(box / beamColumns), box % beamColumns];
    const toSun = sunDirection(latitudeDeg, declinationAtRow(row + 0.5), hourAngleAtColumn(column + 0.5));
    const zenithDeg = (Math.acos(Math.min(1, Math.max(0, toSun[1]))) * 180) / Math.PI;
    const sun = { zenithDeg, bearingDeg: bearingDeg(toSun) };
    const luminance =
      skyKind === 'all-weather'
        ? perezLuminance(measured(boxes, box, zenithDeg, boxMeanSine(latitudeDeg, row, column)))
        : cieLuminance(typeOf(skyKind));
    scaled(brightness(luminance, sun), (openDiffuse * level) / total).forEach((value, i) => {
      energy[i] = (energy[i] as number) + value;
    });
  }
  return energy;
}

/** The mean light of a box while the sun is up. */
function measured(boxes: BoxLight, box: number, sunZenithDeg: number, meanSine: number): MeasuredSky {
  const seconds = 3600 * Math.max(1e-6, boxes.sunH[box] as number);
  const diffuseMJM2 = Math.max(1e-9, boxes.diffuseMJM2[box] as number);
  const beamMJM2 = Math.max(0, (boxes.globalMJM2[box] as number) - diffuseMJM2);
  return {
    sunZenithDeg,
    diffuseWM2: (diffuseMJM2 * 1e6) / seconds,
    beamNormalWM2: (beamMJM2 * 1e6) / seconds / Math.max(leastMeanSine, meanSine),
    aboveWM2: solarConstantWM2,
  };
}

const cieLuminance =
  (type: CieSkyType): Luminance =>
  (zenithDeg, sunAngleDeg) =>
    cieIndicatrix(type, sunAngleDeg) * cieGradation(type, zenithDeg);

/** Brightness times solid angle of each patch of a sky that is the same all round, relative to any. */
function evenBrightness(kind: Exclude<SkyKind, 'all-weather'>): Float64Array {
  const type = typeOf(kind);
  if (type === 5) return Float64Array.from(skyPatches, ({ solidAngleSr }) => solidAngleSr);
  return Float64Array.from(
    skyPatches,
    (patch) => patch.solidAngleSr * meanOver(patch, 16, 1, (zenithDeg) => cieGradation(type, zenithDeg)),
  );
}

interface Sun {
  readonly zenithDeg: number;
  readonly bearingDeg: number;
}

/** The same of a sky with the sun in it. */
function brightness(luminance: Luminance, sun: Sun): Float64Array {
  const [cosSun, sinSun] = [Math.cos(sun.zenithDeg * rad), Math.sin(sun.zenithDeg * rad)];
  return Float64Array.from(skyPatches, (patch) => {
    const mean = meanOver(patch, 4, 4, (zenithDeg, bearing) => {
      const cosAngle =
        cosSun * Math.cos(zenithDeg * rad) +
        sinSun * Math.sin(zenithDeg * rad) * Math.cos((bearing - sun.bearingDeg) * rad);
      return luminance(zenithDeg, Math.acos(Math.min(1, Math.max(-1, cosAngle))) / rad);
    });
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
