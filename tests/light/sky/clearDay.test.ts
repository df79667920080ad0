import { describe, expect, test } from 'vitest';
import { dayLight } from '../../../src/light/sky/dayLight.ts';
import { noonDeclinationDeg, sunDirection } from '../../../src/light/sun.ts';
import { dayOfYear } from '../../../src/season/calendar.ts';
import { haurwitzWM2 } from '../../../src/season/clearSky.ts';
import { extraterrestrialMJM2Day } from '../../../src/season/extraterrestrial.ts';
import { clearSkyShare } from '../../../src/season/globalRadiation.ts';
import { parMolPerMJ } from '../../../src/season/par.ts';
import { northern, southern } from '../../season/places.ts';

const sum = (values: Float64Array): number => values.reduce((a, b) => a + b, 0);
const days = [
  ['north, longest day', northern, '2025-06-21'],
  ['north, shortest day', northern, '2025-12-21'],
  ['north, September', northern, '2025-09-13'],
  ['south, October', southern, '2025-10-03'],
] as const;

describe('a clear day', () => {
  test.each(days)('holds what Haurwitz 1945 gives minute by minute: %s', (_, site, date) => {
    const declination = noonDeclinationDeg(date, site.longitudeDeg);
    let globalMJM2 = 0;
    for (let minute = 0; minute < 1440; minute++) {
      const [, sine] = sunDirection(site.latitudeDeg, declination, (minute + 0.5) / 4 - 180);
      globalMJM2 += (haurwitzWM2((Math.asin(sine) * 180) / Math.PI) * 60) / 1e6;
    }
    const higher = clearSkyShare(site.elevationM) / clearSkyShare(0);
    // Steps of ten minutes against one: the ends of the day alone differ.
    expect(Math.abs(dayLight(site, date, 'clear').globalMJM2 / globalMJM2 / higher - 1)).toBeLessThan(0.001);
  });

  test('is brighter on a mountain by 2e-5 / 0.75 for each metre (FAO-56, equation 37), no brighter than above the air', () => {
    const [low, high] = [0, 1829].map(
      (elevationM) => dayLight({ ...northern, elevationM }, '2025-06-21', 'clear').globalMJM2,
    ) as [number, number];
    expect(high / low).toBeCloseTo(1 + (2e-5 * 1829) / 0.75, 9);
    const highest = dayLight({ ...northern, elevationM: 5000 }, '2025-06-21', 'clear').globalMJM2;
    expect(highest).toBeLessThan(
      0.9 * extraterrestrialMJM2Day(northern.latitudeDeg, dayOfYear('2025-06-21')),
    );
  });

  test.each(days.filter(([name]) => name !== 'north, shortest day'))(
    'brings 0.75 of the radiation above the air where the sun gets high, as FAO-56 equation 36 has it: %s',
    (_, site, date) => {
      const above = extraterrestrialMJM2Day(site.latitudeDeg, dayOfYear(date));
      // Two rules of thumb for one thing: a tenth, less than clear days differ among themselves.
      expect(Math.abs(dayLight(site, date, 'clear').globalMJM2 / above / 0.75 - 1)).toBeLessThan(0.1);
    },
  );

  test.each(days)(
    'is brighter and less diffuse than the normal one, its PAR more diffuse than the whole: %s',
    (_, site, date) => {
      const [clear, normal] = [dayLight(site, date, 'clear'), dayLight(site, date)];
      expect(clear.globalMJM2).toBeGreaterThan(1.05 * normal.globalMJM2);
      const [beam, diffuse] = [sum(clear.beamParMolM2), sum(clear.diffuseParMolM2)];
      expect(beam + diffuse).toBeCloseTo(clear.globalMJM2 * parMolPerMJ, 9);
      const share = clear.diffuseMJM2 / clear.globalMJM2;
      expect(diffuse / (beam + diffuse)).toBeGreaterThan(share + 0.01);
      expect(share).toBeLessThan(0.8 * (normal.diffuseMJM2 / normal.globalMJM2));
    },
  );

  test('is dark in the polar night', () => {
    const clear = dayLight({ ...northern, latitudeDeg: 78.3 }, '2025-12-21', 'clear');
    expect([clear.globalMJM2, sum(clear.beamParMolM2), sum(clear.diffuseParMolM2)]).toEqual([0, 0, 0]);
  });
});
