import { describe, expect, it } from 'vitest';
import { fullLeafHeatGdd8, lightStages, wholeSeason } from '../../src/plan/stages.ts';
import { addDays } from '../../src/season/calendar.ts';
import { seasonDates } from '../../src/season/seasonDates.ts';
import type { Monthly } from '../../src/season/site.ts';
import { planInput, tree, trunk, values } from './smallTree.ts';

const input = planInput(tree(trunk()));
const season = seasonDates(input);

describe('lightStages', () => {
  const stages = lightStages(input, season);

  it('are first figs, full leaf and the last useful fig, in a long season', () => {
    expect(stages.map(({ name }) => name)).toEqual(['first figs', 'full leaf', 'last useful fig']);
    expect(stages[0]?.heatGdd8).toBe(values.firstFigHeatGdd8);
    expect(stages[1]?.heatGdd8).toBe(values.fullLeafHeatGdd8);
    const spare = season.heat.sumAt(season.ripeningEndsOn) - values.firstRipeMidHeatGdd8;
    expect(stages[2]?.heatGdd8).toBeCloseTo(values.firstFigHeatGdd8 + spare, 9);
  });

  it('follow each other without a gap from leaf-out to the end of ripening', () => {
    expect(stages[0]?.period.from).toBe(season.leafOutOn);
    expect(stages.at(-1)?.period.to).toBe(season.ripeningEndsOn);
    for (const [i, { period, toGdd8 }] of stages.slice(0, -1).entries()) {
      expect(stages[i + 1]?.period.from).toBe(addDays(period.to, 1));
      expect(stages[i + 1]?.fromGdd8).toBe(toGdd8);
    }
  });

  it('each hold the heat of their canopy within their days', () => {
    for (const { heatGdd8, fromGdd8, toGdd8 } of stages) {
      expect(heatGdd8).toBeGreaterThan(fromGdd8);
      expect(heatGdd8).toBeLessThan(toGdd8);
    }
  });

  it('are one where the season is too short for a fig, grown as far as it goes', () => {
    const colder = input.site.climate.meanC.map((c) => c - 12) as unknown as Monthly;
    const cold = { ...input, site: { ...input.site, climate: { ...input.site.climate, meanC: colder } } };
    const short = seasonDates(cold);
    const found = lightStages(cold, short);
    expect(found.map(({ name }) => name)).toEqual(['full leaf']);
    expect(found[0]?.heatGdd8).toBe(short.heat.sumAt(short.ripeningEndsOn));
    expect(found[0]?.heatGdd8).toBe(fullLeafHeatGdd8(cold, short));
    expect(found[0]?.period.to).toBe(short.ripeningEndsOn);
  });
});

describe('wholeSeason', () => {
  it('is full leaf from leaf-out to the end', () => {
    const [only, ...more] = wholeSeason(input, season);
    expect(more).toEqual([]);
    expect(only?.name).toBe('full leaf');
    expect(only?.period).toEqual({ from: season.leafOutOn, to: season.ripeningEndsOn });
  });
});
