import { describe, expect, it } from 'vitest';
import { windowFor, workYear } from '../../src/plan/windows.ts';
import { addDays } from '../../src/season/calendar.ts';
import { planInput, tree, trunk, values } from './smallTree.ts';

const north = planInput(tree(trunk()));
const yearOn = (date: string) => workYear({ ...north, date });

describe('workYear', () => {
  it('tells rest, bud break and leaf apart', () => {
    expect(yearOn('2026-02-11').stage).toBe('rest');
    expect(yearOn('2026-03-29').stage).toBe('bud break');
    expect(yearOn('2026-07-19').stage).toBe('in leaf');
    expect(yearOn('2026-12-13').stage).toBe('rest');
  });

  it('plans in rest for the season to come', () => {
    expect(yearOn('2026-12-13').season.budBreakOn).toBe('2027-03-29');
    expect(yearOn('2026-02-11').season.budBreakOn).toBe('2026-03-29');
  });

  it('puts structure cuts in late winter before the next bud break', () => {
    expect(yearOn('2026-07-19').structure).toEqual({ from: '2027-02-01', to: '2027-03-22' });
  });

  it('ends rubbing off when the shoots have four leaves', () => {
    const { season, rubOff } = yearOn('2026-04-03');
    expect(rubOff.from).toBe('2026-03-29');
    const heat = values.leafOutHeatGdd8 + 4 * values.phyllochronGdd8;
    expect(season.heat.sumAt(rubOff.to)).toBeGreaterThanOrEqual(heat);
    expect(season.heat.sumAt(addDays(rubOff.to, -1))).toBeLessThan(heat);
  });

  it('allows no thinning in the eight weeks before the season ends', () => {
    const { season, thinning } = yearOn('2026-07-19');
    expect(thinning.to).toBe(addDays(season.ripeningEndsOn, -56));
  });

  it('works over New Year in the south', () => {
    const half = <T>(months: readonly T[]): T[] => [...months.slice(6), ...months.slice(0, 6)];
    const { meanC, minC, sunshineH } = north.site.climate;
    const climate = {
      ...north.site.climate,
      meanC: half(meanC),
      minC: half(minC),
      sunshineH: half(sunshineH as typeof meanC),
    };
    const site = { ...north.site, latitudeDeg: -41.2, climate, frost: null } as unknown as typeof north.site;
    const south = (date: string) => workYear({ ...north, site, budBreakOn: '2026-09-24', date });
    expect(south('2026-09-30').stage).toBe('bud break');
    expect(south('2027-01-17').stage).toBe('in leaf');
    expect(south('2027-01-17').season.budBreakOn).toBe('2026-09-24');
    expect(south('2027-07-05').stage).toBe('rest');
    expect(south('2027-07-05').season.budBreakOn).toBe('2027-09-24');
    expect(south('2027-07-05').structure).toEqual({ from: '2027-07-30', to: '2027-09-17' });
  });
});

describe('windowFor', () => {
  const date = '2026-07-19';
  const year = yearOn(date);

  it('takes sick wood and suckers at once', () => {
    const when = { from: '2026-07-19', to: '2026-08-16' };
    expect(windowFor([{ rule: 'dead' }], year, date)).toEqual(when);
    expect(windowFor([{ rule: 'sucker', originHeightM: 0, limitM: 0.2 }], year, date)).toEqual(when);
  });

  it('leaves structure cuts for late winter', () => {
    const reason = { rule: 'narrow fork', angleDeg: 23, limitDeg: 35 } as const;
    expect(windowFor([reason], year, date)).toEqual({ from: '2027-02-01', to: '2027-03-22' });
  });

  it('leaves thinning that comes too late in the season for winter', () => {
    const reason = {
      rule: 'crowding',
      ownShare: 0.1,
      figsIfKept: 0,
      figsForOthers: 1,
      figsByShade: 1,
      figsWanted: 0.25,
    } as const;
    const early = yearOn('2026-07-19');
    expect(windowFor([reason], early, '2026-07-19')).toEqual({ from: '2026-07-19', to: early.thinning.to });
    const late = addDays(early.thinning.to, 1);
    expect(windowFor([reason], yearOn(late), late)).toEqual({ from: '2027-02-01', to: '2027-03-22' });
  });

  it('never proposes a day that has passed', () => {
    for (const day of ['2026-03-29', '2026-04-21', '2026-06-30', '2026-09-28']) {
      const reason = {
        rule: 'crowding',
        ownShare: 0.1,
        figsIfKept: 0,
        figsForOthers: 1,
        figsByShade: 1,
        figsWanted: 0.25,
      } as const;
      const { from, to } = windowFor([reason], yearOn(day), day);
      expect(from >= day && to >= from).toBe(true);
    }
  });
});
