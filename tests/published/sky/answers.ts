/** Skies, by our code. */
import type { Receiver, Surface } from '../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { irradiance, type Lamp } from '../../../src/light/irradiance.ts';
import {
  cieGradation,
  cieIndicatrix,
  cieRelativeLuminance,
  cieSkies,
  moonSpencer,
  uniformSkyOnTilt,
} from '../../../src/light/sky/luminance.ts';
import { reinhartPatches, tregenzaPatches } from '../../../src/light/sky/patches.ts';
import type { CaseTable, PublishedCase } from '../caseTable.ts';
import { longWall } from '../viewfactors/scenes.ts';
import cases from './cases.json' with { type: 'json' };

/** Every point of the sky as a lamp: rings and sectors of equal solid angle. */
function lampsOf(luminance: (elevation: number, azimuth: number) => number): Lamp[] {
  const [rings, sectors] = [400, 360];
  const energy = (2 * Math.PI) / (rings * sectors);
  return Array.from({ length: rings * sectors }, (_, i) => {
    const elevation = (Math.asin((Math.floor(i / sectors) + 0.5) / rings) * 180) / Math.PI;
    const azimuth = (((i % sectors) + 0.5) * 360) / sectors;
    return { toSky: direction(azimuth, elevation), energy: energy * luminance(elevation, azimuth) };
  });
}

/** What sensors of these normals receive from a sky, beside some surfaces. */
export function irradianceOf(
  luminance: (elevation: number, azimuth: number) => number,
  normals: readonly Vec3[],
  surfaces: readonly Surface[] = [],
): number[] {
  const receivers = normals.map(
    (normal): Receiver => ({ point: [0, 0, 0], normal, sides: 'one', onSurface: -1 }),
  );
  return [...irradiance({ surfaces, receivers, lights: lampsOf(luminance) })];
}

export const level: Vec3 = [0, 1, 0];
const wall = direction(203, 0);
const cieLevel = (type: number): number =>
  irradianceOf((e, a) => cieRelativeLuminance(type, 90 - e, a, 45), [level])[0] ?? Number.NaN;
export const [moonLevel, moonWall] = irradianceOf(moonSpencer, [level, wall]) as [number, number];

/** Light on a wall that faces an endless parallel wall whose top stands `obstructionDeg` above it, over open level light. */
function behindAWall(obstructionDeg: number): number {
  const opposite = longWall(1, Math.tan((obstructionDeg * Math.PI) / 180), 0.7);
  const facing: Vec3 = [Math.cos(0.7), 0, Math.sin(0.7)];
  return (irradianceOf(moonSpencer, [facing], [opposite])[0] ?? Number.NaN) / moonLevel;
}

/** One ray through the centre of each patch. */
function centreSum(luminance: (elevation: number) => number): number {
  return tregenzaPatches.reduce((sum, { lowDeg, highDeg, solidAngleSr }) => {
    const elevation = highDeg === 90 ? 90 : (lowDeg + highDeg) / 2;
    return sum + solidAngleSr * luminance(elevation) * Math.sin((elevation * Math.PI) / 180);
  }, 0);
}

/** Solid angle of a patch in each row. */
function rowSolidAngles(patches: typeof tregenzaPatches): number[] {
  return patches
    .filter((patch, i) => i === 0 || patch.lowDeg !== patches[i - 1]?.lowDeg)
    .map((p) => p.solidAngleSr);
}

export const sky: CaseTable = {
  cases: cases satisfies PublishedCase[],
  answers: {
    'sky.mooncpencer.h': () => moonLevel,
    'sky.uniform.h': () => irradianceOf(() => 1, [level, wall]),
    'sky.mooncpencer.v': () => moonWall / moonLevel,
    'sky.vsc27': () => behindAWall(25),
    'sky.tilt.iso': () => 100 * uniformSkyOnTilt(40),
    'sky.cie.points': () => [
      cieRelativeLuminance(1, 45, 180, 30),
      cieRelativeLuminance(12, 45, 180, 30),
      cieGradation(1, 0),
      cieIndicatrix(12, 30),
    ],
    'sky.cie.Eh': () => [1, 5, 12].map(cieLevel),
    'sky.cie.table': () => cieSkies.flat(),
    'sky.tregenza.omega': () => rowSolidAngles(tregenzaPatches),
    'sky.tregenza.sum': () => [
      tregenzaPatches.reduce((sum, patch) => sum + patch.solidAngleSr, 0),
      centreSum(() => 1) / Math.PI,
      centreSum(moonSpencer) / ((7 * Math.PI) / 9),
    ],
    'sky.reinhart.count': () => [1, 2, 3, 4, 6].map((n) => reinhartPatches(n).length),
    'sky.reinhart.omega': () => rowSolidAngles(reinhartPatches(2)),
  },
};
