import { expect, test } from 'vitest';
import {
  addDays,
  dateOf,
  dayNumber,
  dayOfYear,
  daysBetween,
  daysInMonth,
  daysOf,
  monthOf,
  monthsOf,
  nextOn,
} from '../../src/season/calendar.ts';

test('days are counted without zones, over changes of summer time and New Year', () => {
  expect(dayNumber('1970-01-01')).toBe(0);
  expect(dateOf(dayNumber('2024-02-29'))).toBe('2024-02-29');
  expect(addDays('2025-12-30', 5)).toBe('2026-01-04');
  expect(addDays('2025-04-05', 1)).toBe('2025-04-06');
  expect(daysBetween('2025-10-03', '2026-04-17')).toBe(196);
});

test('the day of the year runs to 366 in leap years alone', () => {
  expect(dayOfYear('2025-01-01')).toBe(1);
  expect(dayOfYear('2024-12-31')).toBe(366);
  expect(dayOfYear('2025-12-31')).toBe(365);
  expect(dayOfYear('1900-03-01')).toBe(60);
});

test('months know their length and their number', () => {
  expect(['2023-02-07', '2024-02-07', '2100-02-07', '2000-02-07'].map(daysInMonth)).toEqual([28, 29, 28, 29]);
  expect(monthOf('2025-09-13')).toBe(9);
});

test('a period holds its first and its last day', () => {
  expect(daysOf({ from: '2025-12-30', to: '2026-01-02' })).toEqual([
    '2025-12-30',
    '2025-12-31',
    '2026-01-01',
    '2026-01-02',
  ]);
  expect(daysOf({ from: '2025-07-03', to: '2025-07-03' })).toEqual(['2025-07-03']);
  expect(() => daysOf({ from: '2025-07-04', to: '2025-07-03' })).toThrow('daysOf');
});

test('a period over New Year falls into its months in order', () => {
  expect(monthsOf({ from: '2025-11-17', to: '2026-02-03' })).toEqual([
    { from: '2025-11-17', to: '2025-11-30' },
    { from: '2025-12-01', to: '2025-12-31' },
    { from: '2026-01-01', to: '2026-01-31' },
    { from: '2026-02-01', to: '2026-02-03' },
  ]);
});

test('the next day of the year may lie in the next year, and leap days fall on the 28th elsewhere', () => {
  expect(nextOn('05-14', '2025-10-01')).toBe('2026-05-14');
  expect(nextOn('05-14', '2025-05-14')).toBe('2025-05-14');
  expect(nextOn('02-29', '2025-01-05')).toBe('2025-02-28');
  expect(nextOn('02-29', '2024-01-05')).toBe('2024-02-29');
});

test.each(['2025-02-30', '2025-13-01', '2025-1-1', '01/02/2025', '', '2025-02-03T00:00Z'])(
  'what is no calendar day is refused: %s',
  (text) => {
    expect(() => dayNumber(text)).toThrow(`got ${text}`);
    expect(() => monthOf(text)).toThrow('dayNumber');
  },
);

test('numbers that are no whole days within four-digit years are refused', () => {
  expect(() => dateOf(Number.NaN)).toThrow('dateOf');
  expect(() => dateOf(1.5)).toThrow('dateOf');
  expect(() => dateOf(3e9)).toThrow('dateOf');
  expect(() => nextOn('13-01', '2025-01-01')).toThrow('dayNumber');
});
