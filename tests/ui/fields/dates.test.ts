import { expect, it } from 'vitest';
import { dayOfYear } from '../../../src/ui/fields/dates.ts';

it.each([
  [4, 31, '04-30'],
  [2, 31, '02-29'],
  [12, 31, '12-31'],
  [9, 7, '09-07'],
])('the day of the year for month %i and day %i is %s', (month, day, expected) => {
  expect(dayOfYear(month, day)).toBe(expected);
});
