import { describe, expect, it } from 'vitest';
import { groupCuts } from '../../../src/ui/sheets/work/groups.ts';
import { crowding, sampleCut } from './sampleCut.ts';

describe('the cuts of the list', () => {
  it('stand by step of work and by branch, with the numbers they have on the stage', () => {
    const cuts = [
      sampleCut('lateral-3', { rule: 'dead' }, { branch: 'West limb' }, 'remove'),
      sampleCut('b1', crowding),
      sampleCut('b2', crowding),
      sampleCut('b7', crowding, { branch: 'West limb' }),
      sampleCut('b9', crowding),
    ];
    const after = { step: 'crowding', cuts: 4, ripeFigs: 27.3, meanLight: 0.51 } as const;
    const groups = groupCuts({ cuts, steps: [after] });
    expect(groups.map(({ step, after: told }) => [step, told])).toEqual([
      ['dead and sick wood', null],
      ['crowding', after],
    ]);
    const told = groups[1]?.runs.map((run) => [
      run.branch,
      run.cuts.map(({ n, cut }) => `${n} ${cut.target}`),
    ]);
    expect(told).toEqual([
      ['East limb', ['2 b1', '3 b2']],
      ['West limb', ['4 b7']],
      ['East limb', ['5 b9']],
    ]);
  });

  it('stand apart by pass, and the light is told when the whole step is done', () => {
    const cuts = [
      { ...sampleCut('b1', crowding), pass: 1 as const },
      { ...sampleCut('b7', crowding, { branch: 'West limb' }), pass: 1 as const },
      { ...sampleCut('b2', crowding), pass: 2 as const },
    ];
    const after = { step: 'crowding', cuts: 3, ripeFigs: 27.3, meanLight: 0.51 } as const;
    const groups = groupCuts({ cuts, steps: [after] });
    expect(groups.map(({ pass, runs }) => [pass, runs.length])).toEqual([
      [1, 2],
      [2, 1],
    ]);
    expect(groups.map((group) => group.after)).toEqual([null, after]);
    expect(groups[1]?.runs[0]?.cuts[0]?.n).toBe(3);
  });

  it('are no groups where there are no cuts', () => {
    expect(groupCuts({ cuts: [], steps: [] })).toEqual([]);
  });
});
