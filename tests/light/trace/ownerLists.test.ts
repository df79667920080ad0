import { describe, expect, it } from 'vitest';
import { OwnerLists } from '../../../src/light/trace/ownerLists.ts';
import { stream } from './scene.ts';

describe('owner lists', () => {
  it('sort by owner, multiply the shares of one owner, and know a list they have seen', () => {
    const lists = new OwnerLists();
    const close = (...entries: [number, number][]): number => {
      for (const [owner, share] of entries) lists.put(owner, share);
      return lists.close();
    };
    expect(close()).toBe(0);
    const first = close([7, 0.5], [2, 0.25], [7, 0.5]);
    expect(close([2, 0.25], [7, 0.25])).toBe(first);
    expect(close([2, 0.25])).not.toBe(first);
    expect(close([2, 0.25], [7, 0.5])).toBe(3);
    const { listStart, listOwner, listShare } = lists.arrays();
    expect([...listStart]).toEqual([0, 0, 2, 3, 5]);
    expect([...listOwner]).toEqual([2, 7, 2, 2, 7]);
    expect([...listShare]).toEqual([0.25, 0.25, 0.25, 0.25, 0.5]);
  });

  it('number fifty thousand random lists as text keys would (seed 31)', () => {
    const draw = stream(31);
    const lists = new OwnerLists();
    const known = new Map<string, number>([['', 0]]);
    for (let i = 0; i < 50_000; i++) {
      const size = Math.floor(6 * draw());
      const owners = Array.from({ length: size }, () => 1 + Math.floor(40 * draw()));
      for (const owner of owners) lists.put(owner, 0.5);
      const sorted = owners.toSorted((a, b) => a - b);
      const key = sorted.join(' ');
      const list = lists.close();
      expect(known.get(key) ?? list).toBe(list);
      known.set(key, list);
    }
    expect(new Set(known.values()).size).toBe(known.size);
    expect(lists.arrays().listStart).toHaveLength(known.size + 1);
  });
});
