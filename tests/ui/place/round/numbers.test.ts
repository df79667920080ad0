import { describe, expect, it } from 'vitest';
import { changeSurrounding } from '../../../../src/editor/edits/place.ts';
import { fresh } from '../../../../src/ui/sheets/place/round/fresh.ts';
import { roundNumbers } from '../../../../src/ui/sheets/place/round/numbers.ts';
import { smallTree } from '../../../editor/smallTree.ts';

describe.each(['wall', 'fence', 'hedge', 'box', 'crown'] as const)('a %s', (kind) => {
  it('can be added as it is offered', () => {
    expect(changeSurrounding(smallTree, 0, fresh(kind, [0.3, -0.7], 0)).ok).toBe(true);
  });

  it('has numbers that each set what they show and nothing else', () => {
    const start = fresh(kind, [0.3, -0.7], 1);
    for (const [i, number] of roundNumbers(start).entries()) {
      const after = roundNumbers(number.set(0.731)).map((n) => n.value);
      const before = roundNumbers(start).map((n) => n.value);
      expect(after).toEqual(before.with(i, 0.731));
    }
  });
});
