/** Rows as they were published: every field that is read, and the hour that each stands for. */
import { describe, expect, it } from 'vitest';
import { climateFromEpw } from '../../../src/document/climateFromEpw.ts';
import { sunPosition } from '../../../src/light/sun.ts';
import { readEpw } from '../../../src/season/epw/readEpw.ts';
import { foothillsDay, lakesideDay, type RealDay } from './realRows.ts';

function hoursOf({ text }: RealDay) {
  const read = readEpw(text);
  if (!read.ok) throw new Error(`realRows: ${read.where}: ${read.reason}`);
  return read.hours;
}

/** Mean sine of the sun's altitude over the hour that ends when the row says, in standard time. */
function meanSine(day: RealDay, row: readonly string[]): number {
  const { place } = hoursOf(day);
  const [year, month, date, hour] = row.slice(0, 4).map(Number) as [number, number, number, number];
  const fromMs = Date.UTC(year, month - 1, date, hour - 1) - place.zoneH * 3_600_000;
  let sum = 0;
  for (let minute = 0; minute < 60; minute++) {
    const { altitudeDeg } = sunPosition(fromMs + (minute + 0.5) * 60_000, place);
    sum += Math.max(0, Math.sin((altitudeDeg * Math.PI) / 180)) / 60;
  }
  return sum;
}

describe.each([
  ['in the foothills', foothillsDay],
  ['by the lake, without the last fields', lakesideDay],
] as const)('a published day %s', (_, day) => {
  it('is read field by field', () => {
    const hours = hoursOf(day);
    for (const row of day.rows) {
      const slot = Number(row[3]) - 1;
      expect([hours.year[slot], hours.temperatureC[slot]]).toEqual([Number(row[0]), Number(row[6])]);
      const light = [hours.globalWhM2[slot], hours.directNormalWhM2[slot], hours.diffuseWhM2[slot]];
      expect(light).toEqual([13, 14, 15].map((field) => Number(row[field])));
    }
  });

  it('has our sun in its hours: their radiation above the air, level over square, is our mean sine', () => {
    const whole = day.rows.filter((row) => row[11] === '1415');
    expect(whole.length).toBeGreaterThan(6);
    for (const row of whole) {
      const printed = Number(row[10]) / Number(row[11]);
      // Printed to 1 W m-2 of 200 to 640; the publisher's sun is that of the middle of the hour or near it.
      expect(Math.abs(meanSine(day, row) - printed), `hour ${row[3]}`).toBeLessThan(0.004);
    }
  });

  it('has global radiation that is beam times our sine and diffuse, to the rounding of cloudy hours', () => {
    for (const row of day.rows.filter((one) => one[11] === '1415')) {
      const [global, direct, diffuse] = [13, 14, 15].map((field) => Number(row[field])) as [
        number,
        number,
        number,
      ];
      expect(Math.abs(direct * meanSine(day, row) + diffuse - global), `hour ${row[3]}`).toBeLessThan(8);
    }
  });
});

it('one day makes no climate, and is told which month is missing', () => {
  const read = climateFromEpw(foothillsDay.text);
  expect(read.ok ? '' : read.reason).toMatch(/is missing in|has no/);
});
