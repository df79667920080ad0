import { describe, expect, it } from 'vitest';
import { direction } from '../../../src/geometry/world.ts';
import { flatSides, viewDirection } from '../../../src/ui/scene/framing.ts';
import {
  isSide,
  secondFrame,
  secondPicture,
  secondSide,
  sizePx,
} from '../../../src/ui/stage/secondPicture.ts';
import { smallTree } from '../../editor/smallTree.ts';

const pointsOf = (d: string): (readonly [number, number])[] =>
  d
    .slice(1)
    .split('L')
    .map((text) => {
      const [x = Number.NaN, y = Number.NaN] = text.split(' ').map(Number);
      return [x, y];
    });

describe('the second picture', () => {
  it.each(flatSides)('from %s holds all wood, and the letters are those of that side', (side) => {
    const { lines, letters } = secondPicture(smallTree, secondFrame(smallTree, side));
    expect(lines).toHaveLength(smallTree.axes.length);
    for (const [x, y] of lines.flatMap(({ d }) => pointsOf(d))) {
      expect(Math.min(x, y)).toBeGreaterThan(0);
      expect(Math.max(x, y)).toBeLessThan(sizePx);
    }
    const expected = { north: 'EW', east: 'SN', south: 'WE', west: 'NS', above: 'WE' }[side];
    expect(letters.left + letters.right).toBe(expected);
    expect(letters.top).toBe(side === 'above' ? 'N' : '');
  });

  it('shows an east limb right of a west limb from the south, and left of it from the north', () => {
    const tipX = (side: 'north' | 'south', id: string) => {
      const { lines } = secondPicture(smallTree, secondFrame(smallTree, side));
      return pointsOf(lines.find((line) => line.id === id)?.d ?? 'M').at(-1)?.[0] ?? Number.NaN;
    };
    expect(tipX('south', 'east')).toBeGreaterThan(tipX('south', 'west'));
    expect(tipX('north', 'east')).toBeLessThan(tipX('north', 'west'));
  });

  it('stays where it is while a branch is pulled', () => {
    const frame = secondFrame(smallTree, 'above');
    const pulled = {
      ...smallTree,
      axes: smallTree.axes.map((axis) =>
        axis.id === 'west'
          ? {
              ...axis,
              path: [
                [0, 0, 0],
                [-0.5, 0.1, 0.3],
              ] as (typeof axis)['path'],
            }
          : axis,
      ),
    };
    const line = (file: typeof smallTree, id: string) =>
      secondPicture(file, frame).lines.find((one) => one.id === id)?.d;
    expect(line(pulled, 'east')).toBe(line(smallTree, 'east'));
    expect(line(pulled, 'west')).not.toBe(line(smallTree, 'west'));
  });
});

describe('the second side', () => {
  it('is from above while the stage looks from a side, and the side it had while it looks from above', () => {
    for (const side of flatSides.filter(isSide))
      expect(secondSide({ side, facing: viewDirection(side, 0) }, 'west')).toBe('above');
    expect(secondSide({ side: 'above', facing: [0, 1, 0] }, 'west')).toBe('west');
  });

  it.each([
    [170, 'east'],
    [80, 'north'],
    [10, 'west'],
    [265, 'south'],
  ] as const)('is square to a free look from bearing %d', (bearing, side) => {
    expect(secondSide({ side: 'free', facing: direction(bearing, 14) }, 'north')).toBe(side);
    expect(secondSide({ side: null, facing: direction(bearing, 30) }, 'north')).toBe(side);
  });
});
