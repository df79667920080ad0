import { describe, expect, test } from 'vitest';
import { cellLight } from '../../../src/light/sky/cellLight.ts';
import { openSkyDay } from '../../../src/light/sky/openSkyDay.ts';
import { extraterrestrialMJM2Day } from '../../../src/season/extraterrestrial.ts';
import { clearSkyShare } from '../../../src/season/globalRadiation.ts';
import { parMolPerMJ, parMolPerMJBand } from '../../../src/season/par.ts';
import type { Monthly } from '../../../src/season/site.ts';
import { checkCases } from '../checkCases.ts';
import { bands, cloudless, par } from './answers.ts';

const numbers = (id: string): number[] => bands.find((c) => c.id === id)?.expected as number[];

describe('photons against published values', () => {
  checkCases(par);

  // Faust & Logan state 0.45 and 4.48 micromol per joule, which make 0.1 % less than the factor they print.
  test('the factor in use is that of the energy share and photon yield stated with it, within 0.2 %', () => {
    expect(parMolPerMJ / (0.45 * 4.48)).toBeCloseTo(1, 2);
    expect(Math.abs(parMolPerMJ / (0.45 * 4.48) - 1)).toBeLessThan(0.002);
  });

  test('the factor in use lies in the printed band, within 0.1 % of its lower end', () => {
    const [low, high] = numbers('par.molMJ') as [number, number];
    expect(parMolPerMJ).toBeGreaterThan(low * 0.999);
    expect(parMolPerMJ).toBeLessThan(high);
    expect(parMolPerMJBand.low).toBeLessThan(low);
    expect(parMolPerMJBand.high).toBeGreaterThan(high);
  });

  test('no unshaded day passes the clear-sky bound of its month by a tenth, nor falls short of it by a tenth when cloudless', () => {
    numbers('par.dli.bound').forEach((bound, month) => {
      const date = `2025-${String(month + 1).padStart(2, '0')}-15`;
      const day = openSkyDay(cloudless, date);
      expect(day.parMolM2Day).toBeLessThan(bound * 1.1);
      expect(day.parMolM2Day).toBeGreaterThan(bound * 0.9);
      const cells = cellLight({
        site: cloudless,
        groundReflectance: 0.2,
        period: { from: date, to: date },
        skyKind: 'uniform',
      });
      expect(cells.openSkyParMolM2Day).toBeCloseTo(day.parMolM2Day, 10);
    });
  });

  test('the clear-sky bound itself is three quarters of the radiation above the air, as a photon sum', () => {
    const days = [15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349];
    numbers('par.dli.bound').forEach((bound, i) => {
      const ours = clearSkyShare(0) * extraterrestrialMJM2Day(40, days[i] as number) * parMolPerMJ;
      expect(Math.abs(ours - bound)).toBeLessThan(0.25);
    });
  });

  test('the share of the energy that the factor stands for lies in the band of yearly means', () => {
    const [low, high] = numbers('par.fraction') as [number, number];
    // 4.57 micromol per joule of PAR: McCree 1972.
    expect(parMolPerMJ / 4.57).toBeGreaterThan(low);
    expect(parMolPerMJ / 4.57).toBeLessThan(high);
  });

  /** PAR a day of a month whose sun shines for a share of the day. */
  const monthly = (latitudeDeg: number, month: string, sunShare: number): number => {
    const date = `2025-${month}-15`;
    const bare = { ...cloudless, latitudeDeg };
    const sunshineH = cloudless.climate.sunshineH.map(() => sunShare * openSkyDay(bare, date).dayLengthH);
    const climate = { ...cloudless.climate, sunshineH: sunshineH as unknown as Monthly };
    return openSkyDay({ ...bare, climate }, date).parMolM2Day;
  };

  test('months from 27 to 48 degrees north, with the sun out for 0.3 to 0.75 of the day, lie in the span of the United States', () => {
    const [low, high] = numbers('par.dli.us') as [number, number];
    for (const latitudeDeg of [27, 36, 48]) {
      for (const month of ['01', '03', '06', '09', '12']) {
        for (const sunShare of [0.3, 0.75]) {
          const ours = monthly(latitudeDeg, month, sunShare);
          expect(ours).toBeGreaterThan(low);
          expect(ours).toBeLessThan(high);
        }
      }
    }
  });

  test('months of China: summer in the north-west within the band; December only in the far north, 40 degrees being brighter than printed', () => {
    const [winter, summers] = numbers('par.dli.cn') as unknown as [number[], number[]];
    const [[low, high], [summerLow, summerHigh]] = [winter, summers] as [[number, number], [number, number]];
    for (const month of ['05', '06', '07']) {
      const summer = monthly(42, month, 0.65);
      expect(summer).toBeGreaterThan(0.97 * summerLow);
      expect(summer).toBeLessThan(summerHigh);
    }
    expect(monthly(48, '12', 0.55)).toBeGreaterThan(low);
    expect(monthly(48, '12', 0.55)).toBeLessThan(high);
    // By sunshine alone: haze is not in it.
    expect(monthly(40, '12', 0.55)).toBeGreaterThan(high);
    expect(monthly(40, '12', 0.55)).toBeLessThan(1.7 * high);
  });
});
