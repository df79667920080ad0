import { Body, Equator, Horizon, MakeTime, Observer } from 'astronomy-engine';
import { describe, expect, it } from 'vitest';
import { random01 } from '../../../src/geometry/random.ts';
import { angleBetweenDeg } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { sunDay } from '../../../src/light/look/sunDay.ts';
import { openSkyDay } from '../../../src/light/sky/openSkyDay.ts';
import { dateOf, dayNumber } from '../../../src/season/calendar.ts';
import { northern, southern } from '../../season/places.ts';

const seed = 3107;
const days = Array.from({ length: 40 }, (_, i) => ({
  date: dateOf(dayNumber('2015-01-01') + Math.floor(random01(seed, i, 0) * 9000)),
  site: {
    ...northern,
    latitudeDeg: (random01(seed, i, 1) * 2 - 1) * 66,
    longitudeDeg: (random01(seed, i, 2) * 2 - 1) * 180,
  },
}));

/** Altitude and bearing of the sun's centre as a far finer series has them. */
function oracle(
  instantMs: number,
  { latitudeDeg, longitudeDeg }: { latitudeDeg: number; longitudeDeg: number },
) {
  const time = MakeTime(new Date(instantMs));
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const { ra, dec } = Equator(Body.Sun, time, observer, true, true);
  return Horizon(time, observer, ra, dec);
}

describe('a day of sun', () => {
  // Floor: 0.01 degrees of our series (Meeus, low accuracy), 0.0024 of parallax in the oracle.
  it(`has the sun within 0.02 degrees of the oracle in every step of 40 days at latitudes within 66, seed ${seed}`, () => {
    for (const { date, site } of days) {
      for (const { instantMs, toSky } of sunDay(site, date).steps) {
        const { azimuth, altitude } = oracle(instantMs, site);
        const error = angleBetweenDeg(direction(azimuth, altitude), toSky);
        expect(error, `${date} ${instantMs} at ${site.latitudeDeg}`).toBeLessThan(0.02);
      }
    }
  });

  // Floor: 0.0125 degrees of altitude, which the sun crosses in 3 s over the equator, in up to 15 s at the circles at solstice.
  it(`begins and ends where the oracle's sun crosses the level, seed ${seed}`, () => {
    for (const { date, site } of days) {
      const { steps, dayLengthH } = sunDay(site, date);
      const [first, last] = [steps[0], steps.at(-1)];
      if (first === undefined || last === undefined || dayLengthH > 23.9) continue;
      for (const ms of [first.instantMs - first.sunH * 1.8e6, last.instantMs + last.sunH * 1.8e6]) {
        expect(Math.abs(oracle(ms, site).altitude), `${date} at ${site.latitudeDeg}`).toBeLessThan(0.02);
      }
    }
  });

  it('is as long as its steps, which are whole but for the first and the last', () => {
    for (const { date, site } of days) {
      const { steps, dayLengthH } = sunDay(site, date);
      expect(steps.reduce((sum, { sunH }) => sum + sunH, 0)).toBeCloseTo(dayLengthH, 9);
      for (const { sunH } of steps.slice(1, -1)) expect(sunH).toBeCloseTo(1 / 6, 9);
    }
  });

  it.each([
    ['north', northern, '2026-03-21'],
    ['south', southern, '2026-12-23'],
  ] as const)('has all the light of the normal day: %s', (_, site, date) => {
    const { steps } = sunDay(site, date);
    const open = openSkyDay(site, date);
    expect(steps.reduce((sum, { beamParMolM2 }) => sum + beamParMolM2, 0)).toBeCloseTo(
      open.beamParMolM2Day,
      10,
    );
    expect(steps.reduce((sum, { openParMolM2 }) => sum + openParMolM2, 0)).toBeCloseTo(open.parMolM2Day, 10);
  });

  it('loses below a cover what it keeps back, on the days it hangs, and turns beam into sky', () => {
    const cover = { passedFraction: 0.7, diffusingFraction: 0.4, dates: { from: '03-02', until: '05-20' } };
    const [bare, below, off] = [
      sunDay(northern, '2026-04-11'),
      sunDay({ ...northern, cover }, '2026-04-11'),
      sunDay({ ...northern, cover }, '2026-06-11'),
    ];
    bare.steps.forEach((step, s) => {
      const covered = below.steps[s];
      expect(covered?.openParMolM2).toBe(step.openParMolM2);
      expect(covered?.beamParMolM2).toBeCloseTo(0.42 * step.beamParMolM2, 12);
      expect(covered?.diffuseParMolM2).toBeCloseTo(0.7 * step.diffuseParMolM2 + 0.28 * step.beamParMolM2, 12);
    });
    expect(off).toEqual(sunDay(northern, '2026-06-11'));
  });

  it('has nothing in polar night and a whole turn in polar day', () => {
    const far = { ...northern, latitudeDeg: 71.3 };
    expect(sunDay(far, '2026-12-21')).toEqual({ steps: [], dayLengthH: 0 });
    const summer = sunDay(far, '2026-06-21');
    expect(summer.dayLengthH).toBeCloseTo(24, 9);
    expect(summer.steps).toHaveLength(144);
  });
});
