import { describe, expect, test } from 'vitest';
import { bearingDeg } from '../../../src/geometry/world.ts';
import { cellLight } from '../../../src/light/sky/cellLight.ts';
import { skyPatches } from '../../../src/light/sky/cells.ts';
import { dayLight } from '../../../src/light/sky/dayLight.ts';
import { daySteps, hourAngleOfStep } from '../../../src/light/sky/daySteps.ts';
import { type CieSkyType, cieRelativeLuminance } from '../../../src/light/sky/luminance.ts';
import type { SkyKind } from '../../../src/light/sky/skyEnergy.ts';
import { sunDirection } from '../../../src/light/sun.ts';
import { parMolPerMJ } from '../../../src/season/par.ts';
import { northern, southern } from '../../season/places.ts';

const kinds: readonly SkyKind[] = [
  'uniform',
  'overcast',
  'clear',
  'all-weather',
  ...Array.from({ length: 15 }, (_, i) => (i + 1) as CieSkyType),
];
const lightOf = (site: typeof northern, date: string, skyKind: SkyKind) =>
  cellLight({ site, groundReflectance: 0.2, period: { from: date, to: date }, skyKind, weather: 'clear' });
const meanSine = (i: number): number => {
  const patch = skyPatches[i];
  const sine = (deg = Number.NaN): number => Math.sin((deg * Math.PI) / 180);
  return (sine(patch?.lowDeg) + sine(patch?.highDeg)) / 2;
};
/** Light of the patches on the side of a bearing, on a sensor square to each. */
function sideOf(sky: Float64Array, bearing: number): number {
  return skyPatches.reduce((sum, { fromDeg, toDeg }, i) => {
    const off = Math.abs(((((fromDeg + toDeg) / 2 - bearing + 540) % 360) + 360) % 360) - 180;
    return Math.abs(off) < 60 && toDeg - fromDeg < 360 ? sum + (sky[i] ?? Number.NaN) : sum;
  }, 0);
}

describe('the light of the sky over its patches', () => {
  test.each(kinds)('gives the level the closed sum under sky %s', (kind) => {
    const light = lightOf(northern, '2025-05-13', kind);
    const level = light.sky.reduce((sum, value, i) => sum + value * meanSine(i), 0);
    expect(level).toBeCloseTo(light.openDiffuseParMolM2Day, 9);
    for (const value of light.sky) expect(value).toBeGreaterThan(0);
  });

  test.each([
    ['overcast', 1],
    ['clear', 12],
    ['uniform', 5],
  ] as const)('is the same by name and by number: %s', (name, type) => {
    expect(lightOf(southern, '2025-11-08', name).sky).toEqual(lightOf(southern, '2025-11-08', type).sky);
  });

  test.each([
    ['north', northern, '2025-03-09', 180],
    ['south', southern, '2025-09-11', 0],
  ] as const)(
    'is brighter on the side of the noon sun when clear, and even all round when overcast: %s',
    (_, site, date, noonBearing) => {
      const clear = lightOf(site, date, 'clear').sky;
      expect(sideOf(clear, noonBearing)).toBeGreaterThan(1.3 * sideOf(clear, noonBearing + 180));
      const dull = lightOf(site, date, 'overcast').sky;
      expect(sideOf(dull, noonBearing)).toBeCloseTo(sideOf(dull, noonBearing + 180), 6);
      expect(sideOf(clear, 90)).toBeCloseTo(sideOf(clear, 270), 6);
    },
  );

  test.each([
    ['2025-06-21', 12],
    ['2025-09-13', 12],
    ['2025-09-13', 8],
  ] as const)('lies as the sun’s own path in steps of ten minutes has it: %s, CIE %i', (date, type) => {
    const day = dayLight(northern, date, 'clear');
    const truth = new Float64Array(skyPatches.length);
    for (let step = 0; step < daySteps; step++) {
      const diffuse = (day.diffuseParMolM2[step] ?? Number.NaN) + (day.ringParMolM2[step] ?? Number.NaN);
      if (diffuse === 0) continue;
      const toSun = sunDirection(northern.latitudeDeg, day.declinationDeg, hourAngleOfStep(step));
      const zenith = (Math.acos(Math.max(0, toSun[1])) * 180) / Math.PI;
      const bright = skyPatches.map(({ lowDeg, highDeg, fromDeg, toDeg, solidAngleSr }) => {
        let sum = 0;
        for (let i = 0; i < 4; i++)
          for (let k = 0; k < 4; k++) {
            const elevation = lowDeg + ((highDeg - lowDeg) * (i + 0.5)) / 4;
            const bearing = fromDeg + ((toDeg - fromDeg) * (k + 0.5)) / 4;
            sum += cieRelativeLuminance(type, 90 - elevation, bearing - bearingDeg(toSun), zenith);
          }
        return (sum / 16) * solidAngleSr;
      });
      const level = bright.reduce((sum, value, i) => sum + value * meanSine(i), 0);
      bright.forEach((value, i) => {
        truth[i] = (truth[i] ?? Number.NaN) + (value * diffuse) / level;
      });
    }
    const { sky } = lightOf(northern, date, type);
    const total = truth.reduce((sum, value) => sum + value, 0);
    const off = truth.reduce((sum, value, i) => sum + Math.abs((sky[i] ?? Number.NaN) - value), 0) / total;
    // What the blur of the boxes moves from patch to patch, share of all the light of the sky.
    expect(off).toBeLessThan(0.03);
  });

  test.each([
    ['uniform', 1],
    ['overcast', 1],
    [3, 1],
    ['clear', 0],
    ['all-weather', 0],
    [8, 0],
  ] as const)(
    'leaves the ring round the sun with the beam or in the sky, never in both: %s',
    (kind, ringInBeam) => {
      const date = '2025-08-03';
      const day = dayLight(southern, date, 'clear');
      const sum = (values: Float64Array): number => values.reduce((a, b) => a + b, 0);
      const light = lightOf(southern, date, kind);
      const ring = sum(day.ringParMolM2);
      expect(ring).toBeGreaterThan(0.05 * sum(day.diffuseParMolM2));
      expect(light.openBeamParMolM2Day).toBeCloseTo(sum(day.beamParMolM2) - (1 - ringInBeam) * ring, 9);
      expect(light.openDiffuseParMolM2Day).toBeCloseTo(sum(day.diffuseParMolM2) + (1 - ringInBeam) * ring, 9);
      expect(light.openSkyParMolM2Day).toBeCloseTo(day.globalMJM2 * parMolPerMJ, 9);
    },
  );
});
