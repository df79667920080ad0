import { expect, test } from 'vitest';
import { daysOf } from '../../src/season/calendar.ts';
import { airMass, campbellNorman, haurwitzWM2, pressurePa } from '../../src/season/clearSky.ts';
import { dayRadiation } from '../../src/season/dayRadiation.ts';
import { diffuseShareOfHour, diffuseShareOfMonth, diffuseShareOfPar } from '../../src/season/diffuseShare.ts';
import {
  dayOrbit,
  extraterrestrialBetweenMJM2,
  sunsetHourAngleRad,
} from '../../src/season/extraterrestrial.ts';
import { globalFromTemperatureRangeMJM2, sunshineFraction } from '../../src/season/globalRadiation.ts';
import { diffuseShareAt, globalShareAt } from '../../src/season/hourShares.ts';
import { parOfSpectrum, photonsUmolPerJ } from '../../src/season/par.ts';
import { northern, southern } from './places.ts';

test('every day of the year is brighter above the air than below it, with a diffuse part between a fifth and the whole', () => {
  for (const site of [northern, southern]) {
    for (const date of daysOf({ from: '2024-01-01', to: '2024-12-31' })) {
      const day = dayRadiation(site, date);
      expect(day.globalMJM2).toBeLessThan(0.75 * day.extraterrestrialMJM2 + 1e-9);
      expect(day.diffuseMJM2 / day.globalMJM2).toBeGreaterThan(0.2);
      expect(day.diffuseMJM2 / day.globalMJM2).toBeLessThan(0.8);
    }
  }
});

test('a clearness that is given rules over the sunshine hours, in its own month', () => {
  const [a, b, c] = [0.31, 0.47, 0.62];
  const clearness = [a, b, c, a, b, c, a, b, c, a, b, c] as const;
  const site = { ...northern, climate: { ...northern.climate, clearness } };
  const june = dayRadiation(site, '2025-06-17');
  expect(june.clearness).toBe(c);
  expect(june.globalMJM2).toBeCloseTo(c * june.extraterrestrialMJM2, 12);
  expect(dayRadiation(site, '2025-07-17').clearness).toBe(a);
  expect(dayRadiation(northern, '2025-07-17').clearness).not.toBe(a);
});

test('days of one month share their clearness, so a month is made of its own figures alone', () => {
  const june = dayRadiation(northern, '2025-06-03');
  expect(dayRadiation(northern, '2025-06-29').clearness).toBe(june.clearness);
  expect(dayRadiation(northern, '2025-07-01').clearness).not.toBe(june.clearness);
  expect(june.globalMJM2).toBeCloseTo(june.clearness * june.extraterrestrialMJM2, 10);
});

test('the step between months stays below 12 % of the day', () => {
  const days = daysOf({ from: '2025-04-01', to: '2025-10-15' }).map(
    (date) => dayRadiation(northern, date).globalMJM2,
  );
  for (let i = 1; i < days.length; i++) {
    expect(Math.abs((days[i] as number) / (days[i - 1] as number) - 1)).toBeLessThan(0.12);
  }
});

test('monthly, not hourly, diffuse shares: falling with clearness, and higher in summer at the same clearness', () => {
  let before = 1;
  for (let k = 0.25; k <= 0.8; k += 0.05) {
    const share = diffuseShareOfMonth(k, 1.7);
    expect(share).toBeLessThan(before);
    before = share;
  }
  const winter = diffuseShareOfMonth(0.47, (81.4 * Math.PI) / 180);
  expect(winter).toBeCloseTo(1.391 - 3.56 * 0.47 + 4.189 * 0.47 ** 2 - 2.137 * 0.47 ** 3, 12);
  expect(diffuseShareOfMonth(0.47, (81.5 * Math.PI) / 180)).toBeGreaterThan(winter);
  expect(winter).not.toBeCloseTo(diffuseShareOfHour(0.47), 2);
});

test('sunshine beyond the day length counts as all of it', () => {
  expect(sunshineFraction(13.4, 12.9)).toBe(1);
  expect(sunshineFraction(3.1, 0)).toBe(0);
});

test('polar night has no light and polar day no sunset', () => {
  expect(sunsetHourAngleRad(80, -0.4)).toBe(0);
  expect(sunsetHourAngleRad(80, 0.4)).toBe(Math.PI);
  expect(diffuseShareAt(0, 0)).toBe(0);
  expect(globalShareAt(3, Math.PI)).toBeGreaterThan(0);
});

test('radiation above the air over the whole day is the sum of its hours', () => {
  const orbit = dayOrbit(-37.4, 17);
  let sum = 0;
  for (let hour = 0; hour < 24; hour++) {
    const from = ((hour - 12) * Math.PI) / 12;
    sum += extraterrestrialBetweenMJM2(-37.4, orbit, from, from + Math.PI / 12);
  }
  expect(sum).toBeCloseTo(extraterrestrialBetweenMJM2(-37.4, orbit, -Math.PI, Math.PI), 9);
});

test('clear sky is dark with the sun below the horizon', () => {
  expect(haurwitzWM2(-3)).toBe(0);
  expect(campbellNorman(93, 0.6, 101_325, 1361)).toEqual({ globalWM2: 0, beamNormalWM2: 0, diffuseWM2: 0 });
});

test.each<[string, () => unknown]>([
  ['airMass', () => airMass(91)],
  ['pressurePa', () => pressurePa(Number.NaN)],
  ['haurwitzWM2', () => haurwitzWM2(Number.NaN)],
  ['campbellNorman', () => campbellNorman(Number.NaN, 0.5, 1e5, 1361)],
  ['sunshineFraction', () => sunshineFraction(Number.NaN, 12)],
  ['globalFromTemperatureRangeMJM2', () => globalFromTemperatureRangeMJM2(30, 11, 17, 0.16)],
  ['diffuseShareOfHour', () => diffuseShareOfHour(1.2)],
  ['diffuseShareOfMonth', () => diffuseShareOfMonth(Number.NaN, 1.5)],
  ['diffuseShareOfPar', () => diffuseShareOfPar(0.3, -0.2)],
  ['dayOrbit', () => dayOrbit(Number.NaN, 17)],
  ['hourShare', () => globalShareAt(Number.NaN, 1.5)],
  ['photonsUmolPerJ', () => photonsUmolPerJ(0)],
  ['parOfSpectrum', () => parOfSpectrum([400, 410], [1])],
  ['parOfSpectrum', () => parOfSpectrum([410, 400], [1, 1])],
])('%s says what is wrong with a value out of range', (name, call) => {
  expect(call).toThrow(name);
});
