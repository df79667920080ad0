import { describe, expect, it } from 'vitest';
import { changeSurrounding } from '../../../../src/editor/edits/place.ts';
import { fresh } from '../../../../src/ui/sheets/place/round/fresh.ts';
import { roundNumbers } from '../../../../src/ui/sheets/place/round/numbers.ts';
import { keepApart, nearest, outline } from '../../../../src/ui/sheets/place/round/shapes.ts';
import { smallTree } from '../../../editor/smallTree.ts';

describe.each(['wall', 'fence', 'hedge', 'box', 'crown'] as const)('a %s', (kind) => {
  it('can be added as it is offered', () => {
    expect(changeSurrounding(smallTree, 0, fresh(kind, [0.3, -0.7], [])).ok).toBe(true);
  });

  it('is put where nothing else stands, two metres off while there is room', () => {
    const tree = [0.3, -0.7] as const;
    const things = [fresh(kind, [...tree], [])];
    while (things.length < 6) things.push(fresh(kind, [...tree], things));
    const outlines = things.map(outline);
    const away = outlines.map((corners) => {
      const [e, n] = nearest(corners, tree);
      return Math.hypot(e - tree[0], n - tree[1]);
    });
    expect(Math.min(...away)).toBeGreaterThan(1.5);
    expect(Math.max(...away.slice(0, 2))).toBeLessThan(2.01);
    for (const [i, a] of outlines.entries()) {
      for (const b of outlines.slice(i + 1)) expect(keepApart(a, b, 0.15)).toBe(true);
    }
  });

  it('has numbers that each set what they show and nothing else', () => {
    const start = fresh(kind, [0.3, -0.7], []);
    for (const [i, number] of roundNumbers(start).entries()) {
      const after = roundNumbers(number.set(0.731)).map((n) => n.value);
      const before = roundNumbers(start).map((n) => n.value);
      expect(after).toEqual(before.with(i, 0.731));
    }
  });
});
