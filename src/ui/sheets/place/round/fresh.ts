/** Starts for the grower's own figures. All are our choice: common sizes, two metres from the tree. */
import type { Surrounding, TreeFile } from '../../../../document/treeFile.ts';
import { placeWords } from '../words.ts';
import { keepApart, outline, type Spot } from './shapes.ts';

type Site = TreeFile['site'];

/** The sides in the order in which new things are put there: what shades least comes first. */
const sides: readonly (readonly [east: number, north: number, bearingDeg: number])[] = [
  [0, 1, 0],
  [-1, 0, 270],
  [1, 0, 90],
  [0, -1, 180],
];
/** From the tree to a new thing, farther off where the nearer ground is taken; and from one thing to the next. */
const [aways, apartM] = [[2, 4, 6, 9], 0.2] as const;
const halfLengthM = 1.2;

type Side = (typeof sides)[number];

function thingAt(
  kind: Surrounding['kind'],
  tree: Readonly<Spot>,
  [e, n, bearing]: Side,
  awayM: number,
): Surrounding {
  const name = placeWords.fresh[kind];
  const spot = (away: number, along: number): Spot => [
    tree[0] + e * away + n * along,
    tree[1] + n * away - e * along,
  ];
  const [from, to] = [spot(awayM, -halfLengthM), spot(awayM, halfLengthM)];
  const centre = spot(awayM + 1.5, 0);
  if (kind === 'wall') return { kind, name, from, to, heightM: 2, thicknessM: 0.2, reflectance: 0.3 };
  if (kind === 'fence') return { kind, name, from, to, heightM: 1.8, thicknessM: 0.02, openFraction: 0.2 };
  if (kind === 'hedge')
    return { kind, name, from, to, heightM: 1.8, thicknessM: 0.8, leafAreaDensityM2M3: 3 };
  if (kind === 'box') return { kind, name, centre, sizeM: [4, 3, 2.5], turnedDeg: bearing, reflectance: 0.3 };
  return { kind, name, centre, centreHeightM: 2.5, halfSizeM: [1.5, 1.5, 1.5], leafAreaDensityM2M3: 1.5 };
}

/** A new thing two metres from the tree, to the north if there is room, else to the west, the east, the south, or farther off. */
export function fresh(
  kind: Surrounding['kind'],
  tree: Readonly<Spot>,
  others: readonly Surrounding[],
): Surrounding {
  const taken = others.map(outline);
  const choices = aways.flatMap((awayM) => sides.map((side) => thingAt(kind, tree, side, awayM)));
  const isFree = (thing: Surrounding) => taken.every((corners) => keepApart(outline(thing), corners, apartM));
  return choices.find(isFree) ?? (choices[0] as Surrounding);
}

/** A ridge as a common roof has it: half as high above the walls as the house is deep. */
export const freshRidgeM = ([, deepM, heightM]: readonly [number, number, number]): number =>
  Math.round(100 * (heightM + deepM / 2)) / 100;

/** Film of a tunnel and a summer net. */
export const freshCovers: Readonly<Record<'film' | 'net', NonNullable<Site['cover']>>> = {
  film: { name: placeWords.covers.film, passedFraction: 0.75, diffusingFraction: 0.4, dates: null },
  net: {
    name: placeWords.covers.net,
    passedFraction: 0.7,
    diffusingFraction: 0.1,
    dates: { from: '06-01', until: '08-31' },
  },
};

export const freshSlope: NonNullable<Site['slope']> = { slopeDeg: 8, fallsToDeg: 180 };

/** Level hills of ten degrees, with a point to pull at every second wind. */
export const freshSkyline: NonNullable<Site['skyline']> = {
  reflectance: 0.1,
  points: [0, 90, 180, 270].map((bearingDeg) => ({ bearingDeg, heightDeg: 10 })),
};
