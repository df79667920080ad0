import { describe, expect, it } from 'vitest';
import type { Cut } from '../../src/plan/cut.ts';
import { inPasses, passOf, passPeriods } from '../../src/plan/passes.ts';
import { planJob } from '../../src/plan/planJob.ts';
import { daysBetween } from '../../src/season/calendar.ts';
import { figValues } from '../../src/species/fig.ts';
import { bud, drain, limb, planInput, straight, tree, trunk, values } from './smallTree.ts';

const crowding = {
  rule: 'crowding',
  ownShare: 0.2,
  figsIfKept: 1,
  figsForOthers: 1,
  figsByShade: 1,
  figsWanted: 0,
} as const;
const weighed = (figs: number, reasons: Cut['reasons'] = [crowding], kind: Cut['kind'] = 'rub off bud') => {
  return { kind, reasons, gain: { figs, fruitingWoodM: 0, lights: [] }, standsIn: null };
};

describe('passOf', () => {
  it('takes first what a rule takes and what brings a clear gain', () => {
    expect(
      passOf(weighed(-0.4, [{ rule: 'below the fork', heightM: 0.21, forkM: 0.47 }]), 'bud break', values),
    ).toBe(1);
    expect(passOf(weighed(values.sureFromFigs), 'bud break', values)).toBe(1);
    expect(passOf(weighed(values.sureFromFigs - 0.01), 'bud break', values)).toBe(2);
  });

  it('asks the worlds where there are any: for the cut, and for it rather than its rival', () => {
    const rival = { target: 'b', branch: 'East limb', atM: 0.3, stands: 11 };
    const inWorlds = (stands: number, other: typeof rival | null) => {
      const cut = { ...weighed(0.01), standsIn: { worlds: 20, stands, rival: other } };
      return passOf(cut, 'bud break', values);
    };
    expect(inWorlds(12, null)).toBe(1);
    expect(inWorlds(11, null)).toBe(2);
    expect(inWorlds(20, rival)).toBe(2);
    expect(inWorlds(20, { ...rival, stands: 12 })).toBe(1);
  });

  it('knows no passes for wood, nor for buds that are shoots by now', () => {
    expect(passOf(weighed(0.7, [crowding], 'remove'), 'bud break', values)).toBeNull();
    expect(passOf(weighed(0.7), 'in leaf', values)).toBeNull();
  });
});

describe('passPeriods', () => {
  const rubOff = { from: '2026-03-29', to: '2026-05-07' };

  it('lie two weeks apart from the day of the work, or from bud break', () => {
    expect(passPeriods(rubOff, '2026-04-03', values)).toEqual({
      1: { from: '2026-04-03', to: '2026-04-16' },
      2: { from: '2026-04-17', to: '2026-05-07' },
    });
    expect(passPeriods(rubOff, '2026-02-11', values)[1].from).toBe('2026-03-29');
  });

  it('never pass the end of the time for rubbing off', () => {
    expect(passPeriods(rubOff, '2026-04-29', values)).toEqual({
      1: { from: '2026-04-29', to: '2026-05-07' },
      2: { from: '2026-05-07', to: '2026-05-07' },
    });
  });
});

it('keeps cuts before and after the buds where they were', () => {
  const cuts = ([null, 2, 1, 2, 1, null] as const).map((pass, i) => ({ pass, i }));
  expect(inPasses(cuts).map(({ i }) => i)).toEqual([0, 2, 4, 1, 3, 5]);
});

describe('a plan at bud break', () => {
  const buds = (of: string) =>
    Array.from({ length: 7 }, (_, i) => bud(`${of}${i}`, 0.09 + 0.05 * i, 137.5 * i));
  const sketch = tree(
    trunk({ buds: [bud('low', 0.21, 70)] }),
    limb('east', 90, { path: straight(0.44, 90, 41), buds: buds('e') }),
    limb('west', 270, { path: straight(0.47, 270, 39), buds: buds('w') }),
  );
  // Cuts bring 0.6 to 1.3 figs each here.
  const doubtful = figValues({ sureFromFigs: 0.7 });
  const { cuts } = drain(planJob(planInput(sketch, { potVolumeL: 29, values: doubtful }))).plan;

  it('has both passes, each cut in one of them, the first of them first', () => {
    const passes = cuts.map(({ pass }) => pass);
    expect(new Set(passes)).toEqual(new Set([1, 2]));
    expect(passes).toEqual(passes.toSorted((a, b) => (a ?? 0) - (b ?? 0)));
    expect(cuts.find(({ target }) => target === 'low')?.pass).toBe(1);
  });

  it('dates them two weeks apart', () => {
    const from = (pass: number) => cuts.find((cut) => cut.pass === pass)?.when.from as string;
    expect(daysBetween(from(1), from(2))).toBe(14);
  });
});
