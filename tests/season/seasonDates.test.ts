import { expect, test } from 'vitest';
import { addDays, daysBetween } from '../../src/season/calendar.ts';
import { dailyCourse } from '../../src/season/monthly.ts';
import { type Ripening, type SeasonValues, seasonDates } from '../../src/season/seasonDates.ts';
import { figSeason } from '../../src/species/fig/season.ts';
import { northern, southern } from './places.ts';

const values = Object.fromEntries(
  Object.entries(figSeason).map(([name, figure]) => [name, figure.value]),
) as SeasonValues;

const datesAt = (
  site: typeof northern,
  budBreakOn: string,
  ripening: Ripening,
  own: Partial<SeasonValues> = {},
) => seasonDates({ site, budBreakOn, values: { ...values, ...own }, ripening });

test('the stages come in the order of their heat sums', () => {
  const { leafOutOn, firstFigsOn, fullLeafOn, firstRipeOn, ripeningEndsOn } = datesAt(
    northern,
    '2025-04-15',
    'early',
  );
  const order = ['2025-04-15', leafOutOn, firstFigsOn, fullLeafOn, firstRipeOn, ripeningEndsOn] as string[];
  expect([...order].sort()).toEqual(order);
  expect(new Set(order).size).toBe(order.length);
});

test('early ripens before mid, and late not at all where the season is short', () => {
  const early = datesAt(northern, '2025-04-15', 'early').firstRipeOn as string;
  const mid = datesAt(northern, '2025-04-15', 'mid').firstRipeOn as string;
  expect(daysBetween(early, mid)).toBeGreaterThan(20);
  expect(datesAt(northern, '2025-04-15', 'late').firstRipeOn).toBeNull();
});

test('in the southern hemisphere the season runs over New Year and ends in autumn', () => {
  const season = datesAt(southern, '2025-09-21', 'early');
  expect(season.leafOutOn > '2025-09-21' && season.leafOutOn < '2025-11-01').toBe(true);
  expect(season.ripeningEndsOn > '2026-03-15' && season.ripeningEndsOn <= '2026-05-14').toBe(true);
});

test('nights under the figure end it before the frost does, on the first such day after the warmest', () => {
  const season = datesAt(northern, '2025-04-15', 'mid', { ripeningNightMinC: 12.5 });
  const minC = dailyCourse(northern.climate.minC);
  expect(season.endedBy).toBe('cold nights');
  expect(minC(season.ripeningEndsOn)).toBeLessThan(12.5);
  expect(minC(addDays(season.ripeningEndsOn, -1))).toBeGreaterThanOrEqual(12.5);
});

test('the first frost of autumn ends it where it comes before the cold nights', () => {
  const frosty = { ...northern, frost: { lastOfSpring: '05-02', firstOfAutumn: '09-17' } };
  expect(datesAt(frosty, '2025-04-15', 'mid')).toMatchObject({
    ripeningEndsOn: '2025-09-17',
    endedBy: 'frost',
  });
});

test('without frost and cold nights the season has its greatest length', () => {
  const mild = {
    ...northern,
    frost: null,
    climate: { ...northern.climate, minC: [15, 15, 15, 16, 17, 18, 19, 19, 18, 17, 16, 15] as const },
  };
  const season = datesAt(mild, '2025-03-04', 'late');
  expect(daysBetween('2025-03-04', season.ripeningEndsOn)).toBe(240);
  expect(season.endedBy).toBe('length of season');
});

test('where no leaf can unfold the season is empty, not broken', () => {
  const cold = {
    ...northern,
    climate: { ...northern.climate, meanC: northern.climate.minC, minC: northern.climate.minC },
  };
  const season = datesAt(
    { ...cold, frost: { lastOfSpring: '04-10', firstOfAutumn: '04-20' } },
    '2025-04-15',
    'early',
  );
  expect(season).toMatchObject({ leafOutOn: '2025-04-20', ripeningEndsOn: '2025-04-20', firstFigsOn: null });
});

/**
 * A coast in southern Japan: normals of the years in which the heat sums were taken, from memory (within half a degree),
 * and buds breaking on 10 April. In that country mid-season cultivars are picked from about mid-August, late ones from
 * late August to early September (Fukuoka Agricultural Research Center, 1990s).
 */
const coast = {
  ...northern,
  latitudeDeg: 33.4,
  frost: { lastOfSpring: '03-25', firstOfAutumn: '11-22' },
  climate: {
    ...northern.climate,
    meanC: [5.8, 6.4, 9.5, 14.5, 18.8, 22.3, 26.9, 27.4, 23.4, 17.9, 12.7, 7.9],
    minC: [2.2, 2.6, 5.3, 10, 14.4, 18.9, 23.8, 24.1, 19.9, 13.5, 8.4, 4.1],
  },
} as const;

// The heat sums were converted to base 8 at means of 20 to 22 degrees, and July and August there are at 27: hence a week early.
test('a warm-temperate year ripens mid-season figs a week before mid-August, no more', () => {
  const firstRipeOn = datesAt(coast, '2025-04-10', 'mid').firstRipeOn as string;
  expect(daysBetween(firstRipeOn, '2025-08-15')).toBeGreaterThanOrEqual(0);
  expect(daysBetween(firstRipeOn, '2025-08-15')).toBeLessThanOrEqual(8);
});

test('a warm-temperate year ripens late figs a week before late August begins, no more', () => {
  const firstRipeOn = datesAt(coast, '2025-04-10', 'late').firstRipeOn as string;
  expect(daysBetween(firstRipeOn, '2025-08-25')).toBeGreaterThanOrEqual(0);
  expect(daysBetween(firstRipeOn, '2025-08-25')).toBeLessThanOrEqual(8);
});

test('figs take the measured 80 to 89 days, within a week, from first sight to ripe in that year', () => {
  const { firstFigsOn, heat } = datesAt(coast, '2025-04-10', 'late');
  const ripeOn = heat.dateAt(values.firstFigHeatGdd8 + 1420) as string;
  const days = daysBetween(firstFigsOn as string, ripeOn);
  expect(days).toBeGreaterThanOrEqual(73);
  expect(days).toBeLessThanOrEqual(96);
});
