import { describe, expect, it } from 'vitest';
import type { DayAnswer, DayStep } from '../../../src/engine/look.ts';
import { momentOf, stepAt } from '../../../src/ui/stage/dayMoment.ts';
import { leafShares } from '../../../src/ui/stage/leafShares.ts';
import { smallCanopy } from '../scene/smallCanopy.ts';

const light = {
  shoots: new Map([['shoot', 0.3125]]),
  nodes: [{ shootId: 'shoot', node: 2, share: 0.0625 }],
  leaves: [
    { shootId: 'shoot', node: 1, share: 0.4375 },
    { shootId: 'bud-7', node: 1, share: 0.5 },
  ],
};

describe('leafShares', () => {
  it('gives all leaves of a shoot the same by shoot, and those of an unknown one none', () => {
    expect([...leafShares(smallCanopy, light, 'shoot')]).toEqual([0.3125, 0.3125, Number.NaN]);
  });

  it('takes the figure of the node where there is one, else that of the shoot', () => {
    expect([...leafShares(smallCanopy, light, 'node')]).toEqual([0.3125, 0.0625, Number.NaN]);
    expect([...leafShares(smallCanopy, light, 'leaf')]).toEqual([0.4375, 0.3125, Number.NaN]);
  });

  it('shows no finer figure for a shoot whose light is not known', () => {
    expect([...leafShares(smallCanopy, { ...light, shoots: new Map() }, 'leaf')]).toEqual([
      Number.NaN,
      Number.NaN,
      Number.NaN,
    ]);
  });
});

describe('a moment of a day', () => {
  const step = (solarHour: number): DayStep => ({
    solarHour,
    clock: '',
    instantMs: 0,
    bearingDeg: 0,
    altitudeDeg: 10,
    sunHours: 1 / 6,
    openParMolM2: 0.2,
  });
  const steps = [step(6.4), step(6.58), step(6.75)];

  it('is the step nearest to the hour, the first and the last beyond the day, and none in a night', () => {
    expect([2, 6.5, 6.57, 6.7, 23].map((hour) => stepAt(steps, hour))).toEqual([0, 1, 1, 2, 2]);
    expect(stepAt([], 12)).toBe(-1);
  });

  it('tells which shoots and nodes the sun falls on, and nothing in a night', () => {
    const answer = {
      report: { steps, shoots: [{ id: 'shoot', sunlit: [0, 0.5, 1] }] },
      nodes: [{ shootId: 'shoot', node: 2, sunlit: Float32Array.from([0, 0, 1]) }],
    } as unknown as DayAnswer;
    expect(momentOf(answer, 1)).toEqual({
      shoots: new Map([['shoot', 0.5]]),
      nodes: [{ shootId: 'shoot', node: 2, share: 0 }],
    });
    expect(momentOf(answer, -1).nodes).toEqual([{ shootId: 'shoot', node: 2, share: 0 }]);
  });
});
