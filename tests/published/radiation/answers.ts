/** Radiation, diffuse share and hours, by our code. */
import { campbellNorman, haurwitzWM2, meinelShare } from '../../../src/season/clearSky.ts';
import { diffuseShareOfHour, diffuseShareOfPar } from '../../../src/season/diffuseShare.ts';
import {
  clockHourAngleRad,
  dayLengthH,
  dayOrbit,
  extraterrestrialBetweenMJM2,
  extraterrestrialMJM2Day,
  extraterrestrialNormalWM2,
  seasonalCorrection,
} from '../../../src/season/extraterrestrial.ts';
import {
  clearnessFromSunshine,
  clearSkyShare,
  globalFromTemperatureRangeMJM2,
  sunshineFraction,
} from '../../../src/season/globalRadiation.ts';
import { diffuseShareAt, globalShareAt } from '../../../src/season/hourShares.ts';
import type { CaseTable, PublishedCase } from '../caseTable.ts';
import cases from './cases.json' with { type: 'json' };

/** The 15th of each month, as in the tables. */
const days = [15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349];
const radOf = (degrees: number): number => (degrees * Math.PI) / 180;
const daylight = (latitudeDeg: number, day: number): number =>
  dayLengthH(dayOrbit(latitudeDeg, day).sunsetRad);
const tables = (latitudeDeg: number) => ({
  [`Ra.t26.lat${latitudeDeg}`]: () => days.map((day) => extraterrestrialMJM2Day(latitudeDeg, day)),
  [`N.t27.lat${latitudeDeg}`]: () => days.map((day) => daylight(latitudeDeg, day)),
});

/** The hour from 14 to 15 h in a zone centred on 15 degrees west. */
const hour = (() => {
  const latitudeDeg = 16 + 13 / 60;
  const orbit = dayOrbit(latitudeDeg, 274);
  const middle = clockHourAngleRad(14.5, -(16 + 15 / 60), -15, 274);
  const [from, to] = [middle - Math.PI / 24, middle + Math.PI / 24];
  return { orbit, middle, from, to, raMJM2: extraterrestrialBetweenMJM2(latitudeDeg, orbit, from, to) };
})();

/** Sum of a share per hour over the day, at the middles of `steps` steps. */
function daySum(share: (w: number, ws: number) => number, sunsetRad: number, steps: number): number {
  let sum = 0;
  for (let i = 0; i < steps; i++)
    sum += share(((i + 0.5) / steps) * 2 * Math.PI - Math.PI, sunsetRad) * (24 / steps);
  return sum;
}

export const radiation: CaseTable = {
  cases: cases satisfies PublishedCase[],
  answers: {
    'Ra.ex8': () => {
      const { inverseDistance, declinationRad, sunsetRad } = dayOrbit(-20, 246);
      return [inverseDistance, declinationRad, sunsetRad, extraterrestrialMJM2Day(-20, 246)];
    },
    'N.ex9': () => daylight(-20, 246),
    'Ra.ex10': () => [extraterrestrialMJM2Day(-22.9, 135), daylight(-22.9, 135)],
    'Ra.ex15': () => extraterrestrialMJM2Day(45 + 43 / 60, 196),
    'Ra.ex19': () => {
      const { bRad, hours } = seasonalCorrection(274);
      const { orbit, middle, from, to, raMJM2 } = hour;
      return [orbit.inverseDistance, orbit.declinationRad, bRad, hours, middle, from, to, raMJM2];
    },
    ...tables(10),
    ...tables(20),
    ...tables(30),
    ...tables(40),
    ...tables(50),
    'Ra.db1102': () => extraterrestrialBetweenMJM2(43, dayOrbit(43, 105), radOf(-30), radOf(-15)),
    'Ra.extra': () => extraterrestrialNormalWM2(300),
    'Rs.ex10': () => {
      const fraction = sunshineFraction(7.096774193548387, daylight(-22.9, 135));
      return clearnessFromSunshine(fraction) * extraterrestrialMJM2Day(-22.9, 135);
    },
    'Rso.ex11': () => clearSkyShare(0) * extraterrestrialMJM2Day(-22.9, 135),
    'Rso.ex19': () => clearSkyShare(8) * hour.raMJM2,
    'Rs.ex15': () => globalFromTemperatureRangeMJM2(40.6, 26.6, 14.8, 0.16),
    'clear.haurwitz': () => [-20, 5, 10, 30, 50, 90].map(haurwitzWM2),
    'clear.meinel': () => [1, 1.5, 2].map((mass) => 1.353 * meinelShare(mass)),
    'clear.cn': () => {
      const sky = campbellNorman(10, 0.5, 109764.21013135818, 1400);
      return [sky.globalWM2, sky.beamNormalWM2, sky.diffuseWM2];
    },
    'diff.erbs.hourly': () => [
      50 * diffuseShareOfHour(0.405723511),
      1000 * diffuseShareOfHour(0.718132729),
      1000 * diffuseShareOfHour(0.768214312),
    ],
    'diff.erbs.joins': () => [0.22, 0.22 + 1e-9, 0.8, 0.8 + 1e-9].map(diffuseShareOfHour),
    'rt.sum': () => [70, 80, 90, 100, 110].map((ws) => daySum(globalShareAt, radOf(ws), 24)),
    'rd.sum': () => daySum(diffuseShareAt, radOf(100), 144),
    'diff.par.spitters': () => [0.01, 0.1, 0.3, 0.6, 0.8, 0.99].map((q) => diffuseShareOfPar(q, 0.5)),
  },
};
