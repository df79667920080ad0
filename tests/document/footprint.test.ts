import { expect, test } from 'vitest';
import { footprintOf, wayTo } from '../../src/document/footprint.ts';

const shed = footprintOf({
  kind: 'box',
  name: 'Shed',
  centre: [2, 3],
  sizeM: [4, 1, 2],
  turnedDeg: 90,
  reflectance: 0.2,
});

test('the way to a turned box leads square to its nearest side, or to its corner', () => {
  // Turned by a quarter it reaches from east 1.5 to 2.5 and from north 1 to 5.
  const ways = [
    [
      [4.5, 2],
      [-2, 0],
    ],
    [
      [1.9, 7.5],
      [0, -2.5],
    ],
    [
      [0.5, 0],
      [1, 1],
    ],
    [
      [2.2, 4.4],
      [0, 0],
    ],
  ] as const;
  for (const [from, way] of ways) {
    const got = wayTo(shed, from);
    expect(got[0]).toBeCloseTo(way[0], 9);
    expect(got[1]).toBeCloseTo(way[1], 9);
  }
});

test('a hedge stands on the line between its ends, half its thickness to either side', () => {
  const hedge = footprintOf({
    kind: 'hedge',
    name: 'Hedge',
    from: [1, 2],
    to: [4, 6],
    heightM: 1.7,
    thicknessM: 0.8,
    leafAreaDensityM2M3: 3,
  });
  const square = wayTo(hedge, [2.5 + 0.8 * 3, 4 - 0.6 * 3]);
  expect(Math.hypot(...square)).toBeCloseTo(2.6, 9);
  expect(square[0] / square[1]).toBeCloseTo(-0.8 / 0.6, 9);
});
