import { expect, it } from 'vitest';
import { leafSeason } from '../../src/season/leafSeason.ts';
import { seasonDates } from '../../src/season/seasonDates.ts';
import { figSeason } from '../../src/species/fig/season.ts';
import { northern, southern } from './places.ts';

const values = Object.fromEntries(
  Object.entries(figSeason).map(([name, { value }]) => [name, value]),
) as Parameters<typeof seasonDates>[0]['values'];
const datesOf = (site: typeof northern, budBreakOn: string) =>
  seasonDates({ site, budBreakOn, values, ripening: 'mid' });

it('counts the days without leaves, whatever the year', () => {
  const dates = datesOf(northern, '2025-04-04');
  const bare = (from: string, to: string) => leafSeason(dates, northern, { from, to }).daysOutside;
  expect(bare('2025-12-01', '2025-12-31')).toBe(31);
  expect(bare('2029-06-01', '2029-08-31')).toBe(0);
  // 28 October is the last day in leaf.
  expect(bare('2025-10-27', '2025-11-02')).toBe(5);
});

it('runs over New Year in the south', () => {
  const dates = datesOf(southern, '2025-09-27');
  const bare = (from: string, to: string) => leafSeason(dates, southern, { from, to }).daysOutside;
  expect(bare('2026-01-01', '2026-01-31')).toBe(0);
  expect(bare('2026-07-01', '2026-07-31')).toBe(31);
});
