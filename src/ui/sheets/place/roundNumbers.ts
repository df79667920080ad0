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

const wallNumbers = (wall: Of<'wall'>): RoundNumber[] => [
  { label: f.fromEast, value: wall.from[0], as: 'site', set: (v) => ({ ...wall, from: [v, wall.from[1]] }) },
  { label: f.fromNorth, value: wall.from[1], as: 'site', set: (v) => ({ ...wall, from: [wall.from[0], v] }) },
  { label: f.toEast, value: wall.to[0], as: 'site', set: (v) => ({ ...wall, to: [v, wall.to[1]] }) },
  { label: f.toNorth, value: wall.to[1], as: 'site', set: (v) => ({ ...wall, to: [wall.to[0], v] }) },
  { label: f.height, value: wall.heightM, as: 'site', set: (v) => ({ ...wall, heightM: v }) },
  { label: f.thickness, value: wall.thicknessM, as: 'site', set: (v) => ({ ...wall, thicknessM: v }) },
  { label: f.reflectance, value: wall.reflectance, as: 'percent', set: (v) => ({ ...wall, reflectance: v }) },
];

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
    {
      label: f.leaves,
      value: crown.leafAreaDensityM2M3,
      as: 'leafDensity',
      set: (v) => ({ ...crown, leafAreaDensityM2M3: v }),
    },
  ];
};

export function roundNumbers(one: Surrounding): RoundNumber[] {
  if (one.kind === 'wall') return wallNumbers(one);
  return one.kind === 'box' ? boxNumbers(one) : crownNumbers(one);
}

/** A start for the grower's own figures: 2 m north of the tree. Our choice. */
export function fresh(kind: Surrounding['kind']): Surrounding {
  const name = words.fresh[kind];
  if (kind === 'wall') {
    return { kind, name, from: [-2, 2], to: [2, 2], heightM: 2, thicknessM: 0.2, reflectance: 0.3 };
  }
  if (kind === 'box')
    return { kind, name, centre: [0, 2.5], sizeM: [2, 1, 2], turnedDeg: 0, reflectance: 0.2 };
  return {
    kind,
    name,
    centre: [0, 4],
    centreHeightM: 2.5,
    halfSizeM: [1.5, 1.5, 1.5],
    leafAreaDensityM2M3: 1.5,
  };
}
