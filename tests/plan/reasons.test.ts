import { describe, expect, it } from 'vitest';
import { candidatesOf } from '../../src/plan/candidates.ts';
import type { CutEffect } from '../../src/plan/gains.ts';
import { passOf } from '../../src/plan/passes.ts';
import { searchReasons } from '../../src/plan/reasons.ts';
import { ruleContext } from '../../src/plan/ruleContext.ts';
import { stepOf } from '../../src/plan/steps.ts';
import { bud, limb, stance, tree, trunk, values } from './smallTree.ts';

const sketch = tree(trunk(), limb('east', 90, { buds: [bud('a', 0.31, 0), bud('b', 0.35, 10)] }));
const [one, other] = candidatesOf(ruleContext(sketch, stance, values), 'bud break');
if (one === undefined || other === undefined) throw new Error('two buds are to choose from');

const effect = (figsIfKept: number, figsForOthers: number) =>
  ({ ownShare: 0.5, figsIfKept, figsForOthers, figsByShade: figsForOthers }) as CutEffect;
const reasonsOf = (figsIfKept: number, figsForOthers: number) =>
  searchReasons(one, [other], effect(figsIfKept, figsForOthers), values);

describe('the reasons of a bud that is rubbed off', () => {
  it('begin with the limit where it would be worth keeping without it', () => {
    expect(reasonsOf(3.1, 0.4).map(({ rule }) => rule)).toEqual(['pair', 'crowding']);
  });

  it('begin with its figures where they are reason enough', () => {
    expect(reasonsOf(0.6, 0.5).map(({ rule }) => rule)).toEqual(['crowding', 'pair']);
  });

  it('change neither its step nor its pass', () => {
    const reasons = reasonsOf(3.1, 0.4);
    expect(stepOf('rub off bud', reasons)).toBe('crowding');
    const gain = { figs: values.sureFromFigs - 0.01, fruitingWoodM: 0, lights: [] };
    expect(passOf({ kind: 'rub off bud', reasons, gain, standsIn: null }, 'bud break', values)).toBe(2);
  });
});
