/** What stands round the tree as it is seen from above, and how it is moved there. Spots are metres east and north. */
import type { Surrounding } from '../../../../document/treeFile.ts';
import { formatLength, type Units } from '../../../../geometry/measure.ts';
import { deg, rad, wind, wrapDeg } from '../../../../geometry/world.ts';

export type Spot = [eastM: number, northM: number];
type Of<Kind extends Surrounding['kind']> = Extract<Surrounding, { kind: Kind }>;
type Line = Of<'wall' | 'fence' | 'hedge'>;

/** A point by which a thing is stretched or turned. */
export interface Grip {
  readonly id: 'from' | 'to' | 'corner' | 'turn' | 'east' | 'north';
  readonly at: Spot;
  to(spot: Spot): Surrounding;
}

const mm = (m: number): number => Math.round(m * 1000) / 1000;
const within = (m: number, least: number, most: number): number => Math.min(most, Math.max(least, mm(m)));
const inPlace = ([e, n]: Spot): Spot => [within(e, -100, 100), within(n, -100, 100)];
const plus = ([e, n]: Readonly<Spot>, [de, dn]: Readonly<Spot>, times = 1): Spot => [
  e + times * de,
  n + times * dn,
];

export const isLine = (thing: Surrounding): thing is Line => 'from' in thing;

/** Unit vectors along the first and the second side of a block turned clockwise. */
const sides = (turnedDeg: number): readonly [Spot, Spot] => {
  const [c, s] = [Math.cos(rad(turnedDeg)), Math.sin(rad(turnedDeg))];
  return [
    [c, -s],
    [s, c],
  ];
};

const rectangle = (middle: Readonly<Spot>, turnedDeg: number, halfA: number, halfB: number): Spot[] => {
  const [a, b] = sides(turnedDeg);
  const corner = (i: number, j: number) => plus(plus(middle, a, i * halfA), b, j * halfB);
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
};

/** Corners of what is seen from above, in order; a round crown has 48. */
export function outline(thing: Surrounding): Spot[] {
  if (isLine(thing)) {
    const { from, to, thicknessM } = thing;
    const [e, n] = [to[0] - from[0], to[1] - from[1]];
    const middle: Spot = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    return rectangle(middle, deg(Math.atan2(-n, e)), Math.hypot(e, n) / 2, thicknessM / 2);
  }
  if (thing.kind === 'box')
    return rectangle(thing.centre, thing.turnedDeg, thing.sizeM[0] / 2, thing.sizeM[1] / 2);
  const [halfEast, halfNorth] = thing.halfSizeM;
  return Array.from({ length: 48 }, (_, i): Spot => {
    const a = rad((360 * i) / 48);
    return [thing.centre[0] + halfEast * Math.cos(a), thing.centre[1] + halfNorth * Math.sin(a)];
  });
}

/** The same thing so far to the east and north. */
export function movedBy(thing: Surrounding, by: Spot): Surrounding {
  if (!isLine(thing)) return { ...thing, centre: inPlace(plus(thing.centre, by)) };
  return { ...thing, from: inPlace(plus(thing.from, by)), to: inPlace(plus(thing.to, by)) };
}

const boxGrips = (box: Of<'box'>, roomM: number): Grip[] => {
  const [a, b] = sides(box.turnedDeg);
  const [wide, deep, high] = box.sizeM;
  const top = plus(box.centre, b, deep / 2 + roomM);
  const size = (along: Spot, spot: Spot) =>
    within(
      2 * Math.abs(along[0] * (spot[0] - box.centre[0]) + along[1] * (spot[1] - box.centre[1])),
      0.1,
      100,
    );
  return [
    {
      id: 'corner',
      at: plus(plus(box.centre, a, wide / 2), b, deep / 2),
      to: (spot) => ({ ...box, sizeM: [size(a, spot), size(b, spot), high] }),
    },
    {
      id: 'turn',
      at: top,
      to: ([e, n]) => ({
        ...box,
        turnedDeg: Math.round(wrapDeg(deg(Math.atan2(e - box.centre[0], n - box.centre[1])))),
      }),
    },
  ];
};

const crownGrips = (crown: Of<'crown'>): Grip[] => {
  const [east, north, high] = crown.halfSizeM;
  const half = (m: number) => within(Math.abs(m), 0.05, 30);
  return [
    {
      id: 'east',
      at: plus(crown.centre, [east, 0]),
      to: ([e]) => ({ ...crown, halfSizeM: [half(e - crown.centre[0]), north, high] }),
    },
    {
      id: 'north',
      at: plus(crown.centre, [0, north]),
      to: ([, n]) => ({ ...crown, halfSizeM: [east, half(n - crown.centre[1]), high] }),
    },
  ];
};

/** @param roomM how far off its side the grip lies that turns a block, so that both can be touched */
export function gripsOf(thing: Surrounding, roomM: number): Grip[] {
  if (thing.kind === 'box') return boxGrips(thing, roomM);
  if (!isLine(thing)) return crownGrips(thing);
  return [
    { id: 'from', at: [...thing.from], to: (spot) => ({ ...thing, from: inPlace(spot) }) },
    { id: 'to', at: [...thing.to], to: (spot) => ({ ...thing, to: inPlace(spot) }) },
  ];
}

const nearestOnEdge = ([ae, an]: Spot, [be, bn]: Spot, [e, n]: Readonly<Spot>): Spot => {
  const [de, dn] = [be - ae, bn - an];
  const t = ((e - ae) * de + (n - an) * dn) / Math.max(1e-12, de * de + dn * dn);
  return plus([ae, an], [de, dn], Math.min(1, Math.max(0, t)));
};

/** The point of an outline nearest to a spot. */
export function nearest(corners: readonly Spot[], spot: Readonly<Spot>): Spot {
  const away = ([e, n]: Spot) => Math.hypot(e - spot[0], n - spot[1]);
  const points = corners.map((corner, i) =>
    nearestOnEdge(corner, corners[(i + 1) % corners.length] as Spot, spot),
  );
  return points.reduce((best, point) => (away(point) < away(best) ? point : best));
}

/** Area of an outline, square metres: what is larger is drawn below. */
export const areaM2 = (corners: readonly Spot[]): number =>
  Math.abs(
    corners.reduce((sum, [e, n], i) => {
      const [e2, n2] = corners[(i + 1) % corners.length] as Spot;
      return sum + (e * n2 - e2 * n) / 2;
    }, 0),
  );

/** "1.9 m to the north" of the tree, by the nearest point. */
export function whereFrom(thing: Surrounding, tree: Readonly<Spot>, units: Units): string {
  const [e, n] = nearest(outline(thing), tree);
  const [east, north] = [e - tree[0], n - tree[1]];
  return `${formatLength(Math.hypot(east, north), units)} to the ${wind(deg(Math.atan2(east, north)))}`;
}

/** Whether a spot lies within an outline; its corners may run either way round it. */
function holds(corners: readonly Spot[], [e, n]: Readonly<Spot>): boolean {
  const turns = corners.map(([ae, an], i) => {
    const [be, bn] = corners[(i + 1) % corners.length] as Spot;
    return (be - ae) * (n - an) - (bn - an) * (e - ae);
  });
  return turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0);
}

/** Whether two outlines keep so far apart, by their corners: enough for new things, not for a cross of two walls. */
export function keepApart(a: readonly Spot[], b: readonly Spot[], apartM: number): boolean {
  const isFar = (spots: readonly Spot[], from: readonly Spot[]) =>
    spots.every((spot) => {
      const [e, n] = nearest(from, spot);
      return !holds(from, spot) && Math.hypot(e - spot[0], n - spot[1]) >= apartM;
    });
  return isFar(a, b) && isFar(b, a);
}
