import { expect, test } from 'vitest';
import { addDays, daysOf } from '../../src/season/calendar.ts';
import { heatClock, heatOfDay } from '../../src/season/heat.ts';
import { dailyCourse } from '../../src/season/monthly.ts';
import { northern, southern } from './places.ts';

const limits = { heatBaseC: 8, heatCapC: 36 };

test('a day counts its mean above the base, up to the cap, and never below nothing', () => {
  expect([3.1, 8, 17.3, 36, 41].map((mean) => heatOfDay(mean, limits))).toEqual([0, 0, 17.3 - 8, 28, 28]);
});

test('the sum is that of the days before, added one by one, over New Year too', () => {
  const from = '2025-10-02';
  const clock = heatClock(southern.climate, from, limits);
  const course = dailyCourse(southern.climate.meanC);
  let sum = 0;
  for (const date of daysOf({ from, to: '2026-05-20' })) {
    expect(clock.sumAt(date)).toBeCloseTo(sum, 8);
    sum += heatOfDay(course(date), limits);
  }
  expect(sum).toBeGreaterThan(1500);
});

test('the date of a sum is the first day on which the sum stands', () => {
  const clock = heatClock(northern.climate, '2025-04-13', limits);
  for (const wanted of [0.5, 45, 465, 1250]) {
    const date = clock.dateAt(wanted) as string;
    expect(clock.sumAt(date)).toBeGreaterThanOrEqual(wanted);
    expect(clock.sumAt(addDays(date, -1))).toBeLessThan(wanted);
  }
  expect(clock.dateAt(0)).toBe('2025-04-13');
});

test('a sum that a year does not bring has no date, and days outside the year are its ends', () => {
  const clock = heatClock(northern.climate, '2025-04-13', limits);
  expect(clock.dateAt(9000)).toBeNull();
  expect(clock.sumAt('2025-01-01')).toBe(0);
  expect(clock.sumAt('2027-01-01')).toBe(clock.sumAt('2026-04-13'));
  expect(() => clock.dateAt(Number.NaN)).toThrow('dateAt');
});
