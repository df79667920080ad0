import { describe, expect, it } from 'vitest';
import { random01 } from '../../../src/geometry/random.ts';
import { layTags, type Tag } from '../../../src/ui/scene/tagLayout.ts';

const tag = (x: number, y: number, rank = 0): Tag => ({ x, y, widthPx: 21, heightPx: 27, rank });

const room = { top: 0, width: 390 };

/** Pairs of tags of which one hides more than a corner of another. */
function overlaps(tags: readonly Tag[]): number {
  const shifts = layTags(tags, room);
  const at = tags.map(({ x, y }, i) => [x + (shifts[i]?.[0] ?? 0), y + (shifts[i]?.[1] ?? 0)] as const);
  let count = 0;
  at.forEach(([x, y], i) => {
    for (const [otherX, otherY] of at.slice(i + 1)) {
      if (Math.abs(x - otherX) < 18 && Math.abs(y - otherY) < 24) count += 1;
    }
  });
  return count;
}

describe('the tags of the cuts', () => {
  it('stay where they are while none hides another', () => {
    expect(layTags([tag(20, 40), tag(60, 40), tag(20, 90)], room)).toEqual([
      [0, 0],
      [0, 0],
      [0, 0],
    ]);
    expect(layTags([], room)).toEqual([]);
  });

  it('make room for each other, and the one that matters most keeps its place', () => {
    const [first, second] = layTags([tag(50, 50), tag(53, 51, 1)], room);
    expect(second).toEqual([0, 0]);
    expect(Math.hypot(...(first ?? [0, 0]))).toBeGreaterThan(18);
    expect(overlaps([tag(50, 50), tag(53, 51, 1)])).toBe(0);
  });

  it('are never set below their tail', () => {
    const tags = Array.from({ length: 14 }, () => tag(100, 100));
    expect(Math.max(...layTags(tags, room).map(([, down]) => down))).toBeLessThanOrEqual(0);
    expect(overlaps(tags)).toBe(0);
  });

  it('do not hide each other in a crown on a phone, forty at once (seed 23)', () => {
    const tags = Array.from({ length: 40 }, (_, i) =>
      tag(110 + 170 * random01(23, i, 0), 100 + 130 * random01(23, i, 1), Math.floor(3 * random01(23, i, 2))),
    );
    expect(overlaps(tags)).toBe(0);
  });

  it('stay below what covers the picture, and inside its sides', () => {
    const narrow = { top: 56, width: 60 };
    const tags = [tag(30, 88), tag(31, 90), tag(30, 91)];
    const shifts = layTags(tags, narrow);
    tags.forEach(({ x, y, widthPx, heightPx }, i) => {
      const [right, down] = shifts[i] ?? [0, 0];
      expect(y + down - heightPx).toBeGreaterThanOrEqual(narrow.top);
      expect(x + right - widthPx / 2).toBeGreaterThanOrEqual(-2);
      expect(x + right + widthPx / 2).toBeLessThanOrEqual(narrow.width + 2);
    });
  });

  it('come to the same places whenever they are asked for', () => {
    const tags = [tag(50, 50), tag(52, 51), tag(55, 49, 2)];
    expect(layTags(tags, room)).toEqual(layTags(tags, room));
  });
});
