import { describe, expect, it } from 'vitest';
import { silhouette } from '../../../src/editor/forms/silhouette.ts';
import { smallTree } from '../smallTree.ts';

const numbers = (d: string) => (d.match(/-?[\d.]+/g) ?? []).map(Number);
const [trunk, ...rest] = smallTree.axes;

describe('the small picture of a tree', () => {
  it('holds every branch, stands on the soil and stays within its edges', () => {
    const { strokes, size } = silhouette(smallTree.axes, 90);
    expect(strokes).toHaveLength(smallTree.axes.length);
    const all = strokes.flatMap(({ d }) => numbers(d));
    expect(Math.min(...all)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...all)).toBeLessThanOrEqual(size);
    expect(numbers(strokes[0]?.d ?? '').slice(0, 2)).toEqual([size / 2, size - 4]);
    expect(strokes.filter(({ isShoot }) => isShoot)).toHaveLength(2);
  });

  it('is seen square on to the side that runs to the right', () => {
    const northM = 0.8;
    const limb = {
      ...rest[0],
      parentId: 'trunk',
      path: [
        [0, 0, 0],
        [0, 0, -northM],
      ],
    } as (typeof rest)[0];
    const tipX = (acrossDeg: number) =>
      numbers(silhouette([trunk, limb] as (typeof rest)[0][], acrossDeg).strokes[1]?.d ?? '').at(-2) ?? 0;
    // The trunk of the small tree leans by a centimetre.
    expect(Math.abs(tipX(90) - 50)).toBeLessThan(2);
    expect(tipX(0)).toBeGreaterThan(90);
    expect(tipX(180)).toBeLessThan(10);
  });
});
