/** The numbers of a wall, a block or a neighbour, each with how it is set. */
import type { Surrounding } from '../../../document/treeFile.ts';
import type { quantities } from '../../fields/quantities.ts';
import { placeWords as words } from './words.ts';

export interface RoundNumber {
  readonly label: string;
  readonly value: number;
  readonly as: keyof typeof quantities;
  set(value: number): Surrounding;
}

type Of<Kind extends Surrounding['kind']> = Extract<Surrounding, { kind: Kind }>;

const f = words.roundFields;

const lineNumbers = (line: Of<'wall' | 'fence' | 'hedge'>): RoundNumber[] => [
  { label: f.fromEast, value: line.from[0], as: 'site', set: (v) => ({ ...line, from: [v, line.from[1]] }) },
  { label: f.fromNorth, value: line.from[1], as: 'site', set: (v) => ({ ...line, from: [line.from[0], v] }) },
  { label: f.toEast, value: line.to[0], as: 'site', set: (v) => ({ ...line, to: [v, line.to[1]] }) },
  { label: f.toNorth, value: line.to[1], as: 'site', set: (v) => ({ ...line, to: [line.to[0], v] }) },
  { label: f.height, value: line.heightM, as: 'site', set: (v) => ({ ...line, heightM: v }) },
  { label: f.thickness, value: line.thicknessM, as: 'site', set: (v) => ({ ...line, thicknessM: v }) },
];

const wallNumbers = (wall: Of<'wall'>): RoundNumber[] => [
  ...lineNumbers(wall),
  { label: f.reflectance, value: wall.reflectance, as: 'percent', set: (v) => ({ ...wall, reflectance: v }) },
];

const fenceNumbers = (fence: Of<'fence'>): RoundNumber[] => [
  ...lineNumbers(fence),
  { label: f.open, value: fence.openFraction, as: 'percent', set: (v) => ({ ...fence, openFraction: v }) },
];

const leavesOf = <Leafy extends Of<'hedge' | 'crown'>>(leafy: Leafy): RoundNumber => ({
  label: f.leaves,
  value: leafy.leafAreaDensityM2M3,
  as: 'leafDensity',
  set: (v) => ({ ...leafy, leafAreaDensityM2M3: v }),
});

const hedgeNumbers = (hedge: Of<'hedge'>): RoundNumber[] => [...lineNumbers(hedge), leavesOf(hedge)];

const boxNumbers = (box: Of<'box'>): RoundNumber[] => {
  const [wide, deep, high] = box.sizeM;
  return [
    { label: f.east, value: box.centre[0], as: 'site', set: (v) => ({ ...box, centre: [v, box.centre[1]] }) },
    {
      label: f.north,
      value: box.centre[1],
      as: 'site',
      set: (v) => ({ ...box, centre: [box.centre[0], v] }),
    },
    { label: f.wide, value: wide, as: 'site', set: (v) => ({ ...box, sizeM: [v, deep, high] }) },
    { label: f.deep, value: deep, as: 'site', set: (v) => ({ ...box, sizeM: [wide, v, high] }) },
    { label: f.height, value: high, as: 'site', set: (v) => ({ ...box, sizeM: [wide, deep, v] }) },
    { label: f.turned, value: box.turnedDeg, as: 'bearing', set: (v) => ({ ...box, turnedDeg: v }) },
    { label: f.reflectance, value: box.reflectance, as: 'percent', set: (v) => ({ ...box, reflectance: v }) },
  ];
};

const crownNumbers = (crown: Of<'crown'>): RoundNumber[] => {
  const [wide, deep, high] = crown.halfSizeM;
  return [
    {
      label: f.east,
      value: crown.centre[0],
      as: 'site',
      set: (v) => ({ ...crown, centre: [v, crown.centre[1]] }),
    },
    {
      label: f.north,
      value: crown.centre[1],
      as: 'site',
      set: (v) => ({ ...crown, centre: [crown.centre[0], v] }),
    },
    {
      label: f.middleHeight,
      value: crown.centreHeightM,
      as: 'site',
      set: (v) => ({ ...crown, centreHeightM: v }),
    },
    { label: f.halfWide, value: wide, as: 'site', set: (v) => ({ ...crown, halfSizeM: [v, deep, high] }) },
    { label: f.halfDeep, value: deep, as: 'site', set: (v) => ({ ...crown, halfSizeM: [wide, v, high] }) },
    { label: f.halfHigh, value: high, as: 'site', set: (v) => ({ ...crown, halfSizeM: [wide, deep, v] }) },
    leavesOf(crown),
  ];
};

export function roundNumbers(one: Surrounding): RoundNumber[] {
  switch (one.kind) {
    case 'wall':
      return wallNumbers(one);
    case 'fence':
      return fenceNumbers(one);
    case 'hedge':
      return hedgeNumbers(one);
    case 'box':
      return boxNumbers(one);
    case 'crown':
      return crownNumbers(one);
  }
}

/** A start for the grower's own figures: 2 m north of the tree. Our choice. */
export function fresh(kind: Surrounding['kind']): Surrounding {
  const name = words.fresh[kind];
  const line = { from: [-2, 2], to: [2, 2] } satisfies Partial<Of<'wall'>>;
  switch (kind) {
    case 'wall':
      return { kind, name, ...line, heightM: 2, thicknessM: 0.2, reflectance: 0.3 };
    case 'fence':
      return { kind, name, ...line, heightM: 1.8, thicknessM: 0.05, openFraction: 0.3 };
    case 'hedge':
      return { kind, name, ...line, heightM: 1.8, thicknessM: 0.8, leafAreaDensityM2M3: 3 };
    case 'box':
      return { kind, name, centre: [0, 2.5], sizeM: [2, 1, 2], turnedDeg: 0, reflectance: 0.2 };
    case 'crown': {
      const [centreHeightM, leafAreaDensityM2M3] = [2.5, 1.5];
      return { kind, name, centre: [0, 4], centreHeightM, halfSizeM: [1.5, 1.5, 1.5], leafAreaDensityM2M3 };
    }
  }
}
