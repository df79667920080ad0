import { describe, expect, it } from 'vitest';
import { changeSurrounding } from '../../../src/editor/edits/place.ts';
import { fresh, roundNumbers } from '../../../src/ui/sheets/place/roundNumbers.ts';
import { smallTree } from '../../editor/smallTree.ts';

describe.each(['wall', 'box', 'crown'] as const)('a %s', (kind) => {
  it('can be added as it is offered', () => {
    expect(changeSurrounding(smallTree, 0, fresh(kind)).ok).toBe(true);
  });

  it('has numbers that each set what they show and nothing else', () => {
    const start = fresh(kind);
    for (const [i, number] of roundNumbers(start).entries()) {
      const after = roundNumbers(number.set(0.731)).map((n) => n.value);
      const before = roundNumbers(start).map((n) => n.value);
      expect(after).toEqual(before.with(i, 0.731));
    }
  });
});
