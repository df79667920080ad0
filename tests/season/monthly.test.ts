import { expect, test } from 'vitest';
import { dayOfYear, daysOf, monthOf } from '../../src/season/calendar.ts';
import { dailyCourse } from '../../src/season/monthly.ts';
import type { Monthly } from '../../src/season/site.ts';
import { northern, southern } from './places.ts';

test.each([2023, 2024])('the days of every month of %i have the mean given, within 0.002 degrees', (year) => {
  for (const { climate } of [northern, southern]) {
    const course = dailyCourse(climate.meanC);
    const days = daysOf({ from: `${year}-01-01`, to: `${year}-12-31` });
    climate.meanC.forEach((mean, month) => {
      const values = days.filter((date) => monthOf(date) === month + 1).map(course);
      const got = values.reduce((sum, value) => sum + value, 0) / values.length;
      expect(Math.abs(got - mean)).toBeLessThan(0.002);
    });
  }
});

test('a sine over the year is found again from its monthly means within 3 % of its amplitude', () => {
  const sine = (date: string): number => 9.7 * Math.sin(((dayOfYear(date) - 117) / 365) * 2 * Math.PI);
  const days = daysOf({ from: '2025-01-01', to: '2025-12-31' });
  const means = Array.from({ length: 12 }, (_, month) => {
    const values = days.filter((date) => monthOf(date) === month + 1).map(sine);
    return values.reduce((sum, value) => sum + value, 0) / values.length;
  });
  const course = dailyCourse(means as unknown as Monthly);
  const worst = Math.max(...days.map((date) => Math.abs(course(date) - sine(date))));
  expect(worst).toBeLessThan(0.03 * 9.7);
});

test('the course has no step, neither within a month nor at New Year', () => {
  const course = dailyCourse(northern.climate.meanC);
  const days = daysOf({ from: '2024-12-01', to: '2026-01-31' });
  for (let i = 1; i < days.length; i++) {
    expect(Math.abs(course(days[i] as string) - course(days[i - 1] as string))).toBeLessThan(0.2);
  }
});

test('means that are no numbers are refused', () => {
  const broken = [...northern.climate.meanC.slice(0, 11), Number.NaN] as unknown as Monthly;
  expect(() => dailyCourse(broken)).toThrow('dailyCourse');
});
