import { describe, expect, test } from 'vitest';
import { dot, type Vec3 } from '../../../src/geometry/vec.ts';
import { direction, elevationDeg } from '../../../src/geometry/world.ts';
import {
  cieGradation,
  cieIndicatrix,
  cieRelativeLuminance,
  cieSkies,
  moonSpencer,
  uniformSkyOnTilt,
} from '../../../src/light/sky/luminance.ts';
import { reinhartPatches, tregenzaPatches } from '../../../src/light/sky/patches.ts';
import { skyDirections } from '../../../src/light/sky/skyDirections.ts';
import { checkCases } from '../caseTable.ts';
import cases from './cases.json' with { type: 'json' };

/** What a sensor receives from a sky by brute force over rings and sectors of equal solid angle. */
function irradiance(luminance: (elevation: number, azimuth: number) => number, normal: Vec3): number {
  const [rings, sectors] = [400, 360];
  let sum = 0;
  for (let i = 0; i < rings; i++) {
    const elevation = (Math.asin((i + 0.5) / rings) * 180) / Math.PI;
    for (let j = 0; j < sectors; j++) {
      const azimuth = ((j + 0.5) * 360) / sectors;
      sum += luminance(elevation, azimuth) * Math.max(0, dot(normal, direction(azimuth, elevation)));
    }
  }
  return (sum * 2 * Math.PI) / (rings * sectors);
}

const level: Vec3 = [0, 1, 0];
const wall = direction(203, 0);
const cieLevel = (type: number): number =>
  irradiance((e, a) => cieRelativeLuminance(type, 90 - e, a, 45), level);

/** Light on a wall that faces an endless parallel wall whose top stands `obstructionDeg` above it, over open level light. */
function behindAWall(obstructionDeg: number): number {
  const rise = Math.tan((obstructionDeg * Math.PI) / 180);
  const north = direction(0, 0);
  let seen = 0;
  let open = 0;
  for (let wave = 0; wave < 4; wave++) {
    for (const { toSky, solidAngleSr } of skyDirections({ subdivision: 4, seed: 77, wave })) {
      const light = moonSpencer(elevationDeg(toSky)) * solidAngleSr;
      const ahead = dot(toSky, north);
      open += light * toSky[1];
      if (ahead > 0 && toSky[1] > rise * ahead) seen += light * ahead;
    }
  }
  return seen / open;
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

describe('skies against published values', () => {
  checkCases(cases, {
    'sky.mooncpencer.h': () => irradiance(moonSpencer, level),
    'sky.uniform.h': () => [irradiance(() => 1, level), irradiance(() => 1, wall)],
    'sky.mooncpencer.v': () => irradiance(moonSpencer, wall) / irradiance(moonSpencer, level),
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
  });

  test('a tilted sensor gets from a uniform sky what the closed form says', () => {
    for (const tiltDeg of [0, 13, 40, 90, 135, 170]) {
      const normal = direction(97, 90 - tiltDeg);
      expect(irradiance(() => 1 / Math.PI, normal)).toBeCloseTo(uniformSkyOnTilt(tiltDeg), 3);
    }
  });
});
