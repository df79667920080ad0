import { expect, test } from 'vitest';
import type { CellLight } from '../../../src/light/directions.ts';
import { boxMeanSine } from '../../../src/light/sky/boxSine.ts';
import { cellLight } from '../../../src/light/sky/cellLight.ts';
import {
  beamCells,
  beamColumns,
  declinationAtRow,
  groundPatches,
  hourAngleAtColumn,
} from '../../../src/light/sky/cells.ts';
import { dayLight } from '../../../src/light/sky/dayLight.ts';
import { daySteps } from '../../../src/light/sky/daySteps.ts';
import { openSkyDay } from '../../../src/light/sky/openSkyDay.ts';
import { waveDirections } from '../../../src/light/sky/waveDirections.ts';
import { noonDeclinationDeg, sunDirection } from '../../../src/light/sun.ts';
import { dayOfYear, daysOf, monthOf } from '../../../src/season/calendar.ts';
import { parMolPerMJ } from '../../../src/season/par.ts';
import type { Monthly } from '../../../src/season/site.ts';
import { northern, southern } from '../../season/places.ts';

const seed = 902;
const sum = (values: ArrayLike<number>): number => Array.from(values).reduce((a, b) => a + b, 0);
const lightAt = (
  site: typeof northern,
  from: string,
  to: string,
  skyKind: 'uniform' | 'overcast' = 'overcast',
) => cellLight({ site, groundReflectance: 0.23, period: { from, to }, skyKind });

const periods = [
  ['north, longest day', northern, '2025-06-21', '2025-06-21'],
  ['north, equinox', northern, '2025-03-20', '2025-03-20'],
  ['north, shortest day', northern, '2025-12-21', '2025-12-21'],
  ['north, September', northern, '2025-09-01', '2025-09-30'],
  ['north, season', northern, '2025-04-26', '2025-10-16'],
  ['south, season over New Year', southern, '2025-10-03', '2026-04-27'],
] as const;

/** What an open level sensor receives in one wave, by kind. */
function sampled(light: CellLight, latitudeDeg: number, wave: number): { beam: number; sky: number } {
  let [beam, sky] = [0, 0];
  for (const { toSky, kind, cell } of waveDirections({ latitudeDeg, seed, wave })) {
    if (kind === 'beam') beam += (light.beam[cell] as number) * toSky[1];
    if (kind === 'sky') sky += (light.sky[cell] as number) * toSky[1];
  }
  return { beam, sky };
}

test.each(periods)(
  `the mean over 200 waves is the closed open-sky sum within 0.3 %, beam and sky apart: %s, seed ${seed}`,
  (_, site, from, to) => {
    for (const skyKind of ['uniform', 'overcast'] as const) {
      const light = lightAt(site, from, to, skyKind);
      let [beam, sky] = [0, 0];
      for (let wave = 0; wave < 200; wave++) {
        const s = sampled(light, site.latitudeDeg, wave);
        beam += s.beam / 200;
        sky += s.sky / 200;
      }
      expect(Math.abs(beam / light.openBeamParMolM2Day - 1)).toBeLessThan(0.003);
      expect(Math.abs(sky / light.openDiffuseParMolM2Day - 1)).toBeLessThan(0.003);
    }
  },
);

test('one wave alone gives the open sky of a season within 2 %, of a winter day within 8 %', () => {
  for (let wave = 0; wave < 40; wave++) {
    const season = lightAt(northern, '2025-04-26', '2025-10-16');
    const s = sampled(season, northern.latitudeDeg, wave);
    expect(Math.abs((s.beam + s.sky) / season.openSkyParMolM2Day - 1)).toBeLessThan(0.02);
    const winter = lightAt(northern, '2025-12-21', '2025-12-21');
    const w = sampled(winter, northern.latitudeDeg, wave);
    expect(Math.abs((w.beam + w.sky) / winter.openSkyParMolM2Day - 1)).toBeLessThan(0.08);
  }
});

/** Mean over the day of the sun's sine of elevation at its true declination, by summing every minute. */
function meanSine(latitudeDeg: number, declinationDeg: number): number {
  let total = 0;
  for (let minute = 0; minute < 1440; minute++) {
    total += Math.max(0, sunDirection(latitudeDeg, declinationDeg, (minute + 0.5) / 4 - 180)[1]);
  }
  return total / 1440;
}

/** Of a day, counted one by one: within one of the truth. */
function minutesOfSun(latitudeDeg: number, declinationDeg: number): number {
  let minutes = 0;
  for (let minute = 0; minute < 1440; minute++) {
    if (sunDirection(latitudeDeg, declinationDeg, (minute + 0.5) / 4 - 180)[1] > 0) minutes++;
  }
  return minutes;
}

test.each(periods)(
  'the closed sum is clearness times the radiation above the air, in photons: %s',
  (_, site, from, to) => {
    const light = lightAt(site, from, to);
    const days = daysOf({ from, to });
    const globals = days.map((date) => {
      const middle = noonDeclinationDeg(`${date.slice(0, 8)}15`, site.longitudeDeg);
      const sunH = minutesOfSun(site.latitudeDeg, middle) / 60;
      const clearness = 0.25 + (0.5 * (site.climate.sunshineH?.[monthOf(date) - 1] ?? Number.NaN)) / sunH;
      const distance = 1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear(date)) / 365);
      const sine = meanSine(site.latitudeDeg, noonDeclinationDeg(date, site.longitudeDeg));
      return clearness * 0.082 * 1440 * distance * sine;
    });
    const expected = (sum(globals) / days.length) * parMolPerMJ;
    // What one minute more or less of a short day of sun makes of its clearness.
    expect(Math.abs(light.openSkyParMolM2Day / expected - 1)).toBeLessThan(8e-4);
    expect(light.openBeamParMolM2Day + light.openDiffuseParMolM2Day).toBeCloseTo(
      light.openSkyParMolM2Day,
      10,
    );
  },
);

test('a year of months is the mean of its days', () => {
  const months = Array.from({ length: 12 }, (_, m) => {
    const month = String(m + 1).padStart(2, '0');
    const last = new Date(Date.UTC(2025, m + 1, 0)).getUTCDate();
    return { days: last, light: lightAt(northern, `2025-${month}-01`, `2025-${month}-${last}`) };
  });
  const year = lightAt(northern, '2025-01-01', '2025-12-31');
  const part = (pick: (light: CellLight) => number): number =>
    sum(months.map(({ days, light }) => pick(light) * days)) / 365;
  expect(part((light) => light.openSkyParMolM2Day)).toBeCloseTo(year.openSkyParMolM2Day, 9);
  expect(part((light) => sum(light.beam))).toBeCloseTo(sum(year.beam), 9);
  expect(part((light) => light.sky[17] as number)).toBeCloseTo(year.sky[17] as number, 9);
});

test('the beam of a single day comes from its own declination, within 0.3 degrees in the mean', () => {
  for (const date of ['2025-06-21', '2025-05-03', '2025-03-20', '2025-10-09', '2025-12-21']) {
    const light = lightAt(northern, date, date);
    let [mean, all] = [0, 0];
    for (let cell = 0; cell < beamCells; cell++) {
      const row = Math.floor(cell / beamColumns);
      const level = (light.beam[cell] as number) * boxMeanSine(northern.latitudeDeg, row, cell % beamColumns);
      mean +=
        level * ((declinationAtRow(row) + 4 * declinationAtRow(row + 0.5) + declinationAtRow(row + 1)) / 6);
      all += level;
    }
    expect(Math.abs(mean / all - noonDeclinationDeg(date, northern.longitudeDeg)), `on ${date}`).toBeLessThan(
      0.3,
    );
  }
});

test('morning and afternoon are mirror images, since the sun is in solar time', () => {
  const { beam } = lightAt(southern, '2025-10-03', '2026-04-27');
  for (let cell = 0; cell < beamCells; cell++) {
    const mirror = Math.floor(cell / beamColumns) * beamColumns + (beamColumns - 1 - (cell % beamColumns));
    expect(beam[cell]).toBeCloseTo(beam[mirror] as number, 10);
  }
});

test('no cell is negative or unreal, and no box outshines a clear sun: 10 mol m-2 in an hour of solar time', () => {
  for (const [, site, from, to] of periods) {
    const light = lightAt(site, from, to);
    for (const energy of [...light.sky, ...light.beam, ...light.ground]) {
      expect(energy).toBeGreaterThanOrEqual(0);
      expect(energy).toBeLessThan(10 * (2 / 3));
    }
  }
});

test('hemispheres mirror each other: half a year apart the same weather gives the same share of beam in a wall-facing sun', () => {
  const even = Array(12).fill(5.5) as unknown as Monthly;
  const at = (latitudeDeg: number, date: string): CellLight => {
    const site = { ...northern, latitudeDeg, climate: { ...northern.climate, sunshineH: even } };
    return cellLight({ site, groundReflectance: 0, period: { from: date, to: date }, skyKind: 'uniform' });
  };
  const towardsEquator = (light: CellLight, latitudeDeg: number): number => {
    let seen = 0;
    for (let cell = 0; cell < beamCells; cell++) {
      const declination = declinationAtRow(Math.floor(cell / beamColumns) + 0.5);
      const v = sunDirection(latitudeDeg, declination, hourAngleAtColumn((cell % beamColumns) + 0.5));
      seen += (light.beam[cell] as number) * Math.max(0, latitudeDeg > 0 ? v[2] : -v[2]);
    }
    return seen / light.openBeamParMolM2Day;
  };
  const north = towardsEquator(at(37.4, '2025-06-21'), 37.4);
  const south = towardsEquator(at(-37.4, '2025-12-21'), -37.4);
  expect(Math.abs(north / south - 1)).toBeLessThan(0.01);
});

test('ground gives back its reflectance of the open light, evenly over the lower half', () => {
  const light = lightAt(northern, '2025-06-01', '2025-06-30');
  const radiance = (0.23 * light.openSkyParMolM2Day) / Math.PI;
  groundPatches.forEach((patch, i) => {
    expect(light.ground[i]).toBeCloseTo(radiance * patch.solidAngleSr, 10);
  });
});

test('an overcast sky is brighter overhead than at the horizon, about three times, and a uniform one is not', () => {
  const overcast = lightAt(northern, '2025-06-01', '2025-06-30', 'overcast').sky;
  const uniform = lightAt(northern, '2025-06-01', '2025-06-30', 'uniform').sky;
  const ratio = (sky: Float64Array): number =>
    (sky[144] as number) / 0.0344199465 / ((sky[0] as number) / 0.0435449227);
  expect(ratio(uniform)).toBeCloseTo(1, 6);
  expect(ratio(overcast)).toBeGreaterThan(2.4);
  expect(ratio(overcast)).toBeLessThan(3.1);
});

test('the day keeps its global and diffuse totals, and PAR is more diffuse than the rest', () => {
  for (const date of ['2025-01-17', '2025-06-03', '2025-10-29']) {
    const day = dayLight(northern, date);
    const diffuse = sum(day.diffuseParMolM2);
    const beam = sum(day.beamParMolM2);
    expect(day.beamParMolM2).toHaveLength(daySteps);
    expect(beam + diffuse).toBeCloseTo(day.globalMJM2 * parMolPerMJ, 9);
    expect(diffuse / (beam + diffuse)).toBeGreaterThan(day.diffuseMJM2 / day.globalMJM2);
    expect(diffuse / (beam + diffuse)).toBeLessThan(day.diffuseMJM2 / day.globalMJM2 + 0.12);
  }
});

test('the open-sky day has 24 hours that add up to it, none before sunrise, most at noon', () => {
  const day = openSkyDay(southern, '2025-12-09');
  expect(day.hours.map((h) => h.solarHour)).toEqual(Array.from({ length: 24 }, (_, i) => i));
  expect(sum(day.hours.map((h) => h.beamParMolM2 + h.diffuseParMolM2))).toBeCloseTo(day.parMolM2Day, 10);
  expect(day.parMolM2Day).toBeCloseTo(lightAt(southern, '2025-12-09', '2025-12-09').openSkyParMolM2Day, 10);
  expect(day.hours[3]?.diffuseParMolM2).toBe(0);
  const noon = day.hours[12] as { beamParMolM2: number };
  for (const hour of day.hours) expect(hour.beamParMolM2).toBeLessThanOrEqual(noon.beamParMolM2 + 1e-9);
  expect(day.dayLengthH).toBeCloseTo(14.5, 0);
});

test('a reflectance or a period that is none is refused', () => {
  const input = {
    site: northern,
    groundReflectance: 1.2,
    period: { from: '2025-06-01', to: '2025-06-30' },
    skyKind: 'uniform',
  } as const;
  expect(() => cellLight(input)).toThrow('cellLight');
  expect(() => cellLight({ ...input, groundReflectance: Number.NaN })).toThrow('cellLight');
  expect(() => lightAt(northern, '2025-06-02', '2025-06-01')).toThrow('daysOf');
});
