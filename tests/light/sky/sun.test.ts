import { expect, test } from 'vitest';
import { direction } from '../../../src/geometry/world.ts';
import {
  apparentAltitudeDeg,
  noonDeclinationDeg,
  sunDirection,
  sunPath,
  sunPosition,
  sunTimes,
} from '../../../src/light/sun.ts';

const north = { latitudeDeg: 48.7, longitudeDeg: 2.3 };
const south = { latitudeDeg: -37.4, longitudeDeg: 175.1 };
const far = { latitudeDeg: 65.6, longitudeDeg: -151.2 };

test('a summer evening sun stands north of west, and a southern noon sun in the north', () => {
  const evening = sunPosition(Date.parse('2025-06-21T19:00:00Z'), north);
  expect(evening.azimuthDeg).toBeGreaterThan(295);
  expect(evening.azimuthDeg).toBeLessThan(315);
  const noon = sunPosition(sunTimes('2025-12-21', south).transitMs, south);
  expect(Math.min(noon.azimuthDeg, 360 - noon.azimuthDeg)).toBeLessThan(0.5);
  expect(noon.altitudeDeg).toBeCloseTo(90 - 37.4 + 23.44, 1);
});

test('the true altitude is below the seen one by the refraction, half a degree at the horizon and none overhead', () => {
  const { sunriseMs, transitMs } = sunTimes('2025-08-07', north);
  const lift = (ms: number): number => apparentAltitudeDeg(ms, north) - sunPosition(ms, north).altitudeDeg;
  expect(lift(sunriseMs as number)).toBeCloseTo(0.48, 1);
  expect(lift(transitMs)).toBeLessThan(0.02);
  expect(lift(transitMs)).toBeGreaterThan(0.001);
});

test('at rise and set the centre stands 0.833 degrees below the level', () => {
  for (const place of [north, south, far]) {
    const { sunriseMs, sunsetMs } = sunTimes('2025-10-13', place);
    for (const ms of [sunriseMs, sunsetMs]) {
      expect(Math.abs(sunPosition(ms as number, place).altitudeDeg + 0.833)).toBeLessThan(0.01);
    }
  }
});

test.each([north, south, far])(
  'every day of a year has its own sun times, in order, at $latitudeDeg, $longitudeDeg',
  (place) => {
    let before = Number.NEGATIVE_INFINITY;
    for (let day = 0; day < 366; day++) {
      const date = new Date(Date.UTC(2024, 0, 1 + day)).toISOString().slice(0, 10);
      const { sunriseMs, transitMs, sunsetMs, allDay } = sunTimes(date, place);
      const localNoonMs = Date.parse(`${date}T12:00:00Z`) - place.longitudeDeg * 240_000;
      expect(Math.abs(transitMs - localNoonMs)).toBeLessThan(17.5 * 60_000);
      expect(transitMs).toBeGreaterThan(before);
      before = transitMs;
      expect(allDay === null).toBe(sunriseMs !== null && sunsetMs !== null);
      if (sunriseMs === null || sunsetMs === null) continue;
      expect(sunriseMs).toBeLessThan(transitMs);
      expect(sunsetMs).toBeGreaterThan(transitMs);
    }
  },
);

test('the path runs from rise to set in even steps of hour angle, highest at noon', () => {
  const path = sunPath('2025-05-11', north, 7.5);
  const { sunriseMs, sunsetMs } = sunTimes('2025-05-11', north);
  expect(path[0]?.instantMs).toBe(sunriseMs);
  expect(path.at(-1)?.instantMs).toBe(sunsetMs);
  for (const p of path.slice(1, -1)) {
    expect(Math.abs(p.hourAngleDeg / 7.5 - Math.round(p.hourAngleDeg / 7.5))).toBeLessThan(0.01);
  }
  const highest = path.reduce((a, b) => (b.altitudeDeg > a.altitudeDeg ? b : a));
  expect(Math.abs(highest.hourAngleDeg)).toBeLessThan(0.1);
  for (let i = 1; i < path.length; i++) {
    expect(path[i]?.hourAngleDeg).toBeGreaterThan(path[i - 1]?.hourAngleDeg as number);
  }
});

test('a sun that never sets has a whole turn of path, and one that never rises has none', () => {
  const polar = { latitudeDeg: 71.3, longitudeDeg: 25.7 };
  expect(sunTimes('2025-06-21', polar)).toMatchObject({ sunriseMs: null, sunsetMs: null, allDay: 'up' });
  expect(sunPath('2025-06-21', polar).length).toBeGreaterThan(72);
  expect(sunTimes('2025-12-21', polar).allDay).toBe('down');
  expect(sunPath('2025-12-21', polar)).toEqual([]);
});

test('directions from declination and hour angle: afternoon is west, north of the line in summer', () => {
  expect(sunDirection(48.7, 0, 90)[0]).toBeCloseTo(-1, 10);
  expect(sunDirection(48.7, 23, 90)[2]).toBeLessThan(0);
  const noon = direction(0, 90 - 37.4 + 21);
  sunDirection(-37.4, -21, 0).forEach((v, i) => {
    expect(v).toBeCloseTo(noon[i] as number, 10);
  });
});

test('declination at noon runs from -23.44 to 23.44 and through 0 at the equinoxes', () => {
  expect(noonDeclinationDeg('2025-06-21', 2.3)).toBeCloseTo(23.44, 1);
  expect(noonDeclinationDeg('2025-12-21', 175.1)).toBeCloseTo(-23.44, 1);
  expect(Math.abs(noonDeclinationDeg('2025-03-20', 2.3))).toBeLessThan(0.2);
});

test('dates, instants and places that are none are refused', () => {
  expect(() => sunPosition(Number.NaN, north)).toThrow('sunPosition');
  expect(() => sunPosition(0, { latitudeDeg: Number.NaN, longitudeDeg: 0 })).toThrow('sunPosition');
  expect(() => sunTimes('2025-02-30', north)).toThrow('dayNumber');
  expect(() => sunTimes('2025-02-03', { latitudeDeg: 10, longitudeDeg: 500 })).toThrow('sunTimes');
  expect(() => sunPath('2025-02-03', north, 0)).toThrow('sunPath');
  expect(() => sunDirection(48, Number.NaN, 0)).toThrow('sunDirection: finite angles');
});
