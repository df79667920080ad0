import { describe, expect, it } from 'vitest';
import { cellLight } from '../../../src/light/sky/cellLight.ts';
import { dayLight } from '../../../src/light/sky/dayLight.ts';
import { sinesOfSteps } from '../../../src/light/sky/radiationSteps.ts';
import { northern } from '../../season/places.ts';

const farNorth = { ...northern, latitudeDeg: 66 };
const sum = (values: Iterable<number>): number => Array.from(values).reduce((a, b) => a + b, 0);

/** A small leaf turned anyhow in the open: half of what a sensor square to each part of the light gets. */
function loneLeaf(latitudeDeg: number, month: string): number {
  const light = cellLight({
    site: { ...northern, latitudeDeg },
    groundReflectance: 0.2,
    period: { from: `2025-${month}-01`, to: `2025-${month}-28` },
    skyKind: 'uniform',
  });
  const square = sum(light.beam) + sum(light.sky) + sum(light.ground);
  return square / 2 / light.openSkyParMolM2Day;
}

describe('the beam of a low sun', () => {
  it('gives a leaf in the far north in December about what it gives it elsewhere, not ten times the open level', () => {
    expect(loneLeaf(66, '12')).toBeLessThan(3.5);
    expect(loneLeaf(66, '12')).toBeGreaterThan(1);
    expect(loneLeaf(48.7, '12')).toBeLessThan(1.7);
  });

  it('is never brighter, square to it, than a clear sky lets through, and the day keeps its radiation', () => {
    const day = dayLight(farNorth, '2025-12-19');
    const sines = sinesOfSteps(66, (day.declinationDeg * Math.PI) / 180);
    const { global, diffuse } = day.steps;
    global.forEach((value, step) => {
      const sine = Math.max(sines[step] as number, 1e-9);
      const squareWM2 = ((value - (diffuse[step] as number)) * 1e6) / 600 / sine;
      // 0.7 ^ (26.3 ^ 0.678) of 1,412 W m-2 at 1 degree, air mass by Kasten and Young 1989.
      expect(squareWM2).toBeLessThan(54);
    });
    expect(sum(global)).toBeCloseTo(day.globalMJM2, 12);
    expect(sum(day.beamParMolM2) + sum(day.diffuseParMolM2)).toBeCloseTo(day.globalMJM2 * 2.018, 3);
  });

  it('is hardly touched where the sun gets up', () => {
    const day = dayLight(northern, '2025-06-21');
    expect(sum(day.beamParMolM2)).toBeGreaterThan(0);
    const sines = sinesOfSteps(48.7, (day.declinationDeg * Math.PI) / 180);
    const low = sum(day.steps.global.filter((_, step) => (sines[step] as number) < Math.sin(Math.PI / 60)));
    expect(low / day.globalMJM2).toBeLessThan(0.004);
  });
});
