import { expect, test } from 'vitest';
import { campbellNorman } from '../../src/season/clearSky.ts';
import { dayOrbit, extraterrestrialMJM2Day, sunsetHourAngleRad } from '../../src/season/extraterrestrial.ts';
import {
  clearnessFromSunshine,
  clearSkyShare,
  globalFromTemperatureRangeMJM2,
  sunshineFraction,
} from '../../src/season/globalRadiation.ts';
import { heatOfDay } from '../../src/season/heat.ts';
import { parOfSpectrum } from '../../src/season/par.ts';

const none = Number.NaN;

test.each<[string, () => unknown]>([
  ['dayOrbit', () => dayOrbit(91, 100)],
  ['dayOrbit', () => dayOrbit(40, none)],
  ['dayOrbit', () => extraterrestrialMJM2Day(none, 100)],
  ['sunsetHourAngleRad', () => sunsetHourAngleRad(-90.1, 0.2)],
  ['sunsetHourAngleRad', () => sunsetHourAngleRad(40, none)],
  ['sunshineFraction', () => sunshineFraction(none, 12)],
  ['clearnessFromSunshine', () => clearnessFromSunshine(none)],
  ['clearnessFromSunshine', () => clearnessFromSunshine(1.2)],
  ['clearSkyShare', () => clearSkyShare(none)],
  ['globalFromTemperatureRangeMJM2', () => globalFromTemperatureRangeMJM2(none, 27, 15, 0.16)],
  ['globalFromTemperatureRangeMJM2', () => globalFromTemperatureRangeMJM2(40, 15, 27, 0.16)],
  ['campbellNorman', () => campbellNorman(10, -0.5, 100_000, 1400)],
  ['heatOfDay', () => heatOfDay(none, { heatBaseC: 8, heatCapC: 36 })],
  ['parOfSpectrum', () => parOfSpectrum([500, 501], [1, none])],
])('%s refuses what is no number or out of range, and gives no NaN', (name, call) => {
  expect(call).toThrow(new RegExp(`^${name}: `));
});

test('the sun sets at the poles by half a year: never up to midwinter, all day round midsummer', () => {
  expect(sunsetHourAngleRad(90, 0.3)).toBeCloseTo(Math.PI, 6);
  expect(sunsetHourAngleRad(90, -0.3)).toBeCloseTo(0, 6);
  expect(sunsetHourAngleRad(-90, -0.3)).toBeCloseTo(Math.PI, 6);
});
