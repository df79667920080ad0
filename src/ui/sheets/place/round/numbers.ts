/** The numbers of what stands round the tree, each with how it is set. */
import type { Surrounding } from '../../../../document/treeFile.ts';
import type { quantities } from '../../../fields/quantities.ts';
import { placeWords } from '../words.ts';
import { isLine, type Spot } from './shapes.ts';

export interface RoundNumber {
  readonly label: string;
  readonly value: number;
  readonly as: keyof typeof quantities;
  set(value: number): Surrounding;
}

type Of<Kind extends Surrounding['kind']> = Extract<Surrounding, { kind: Kind }>;

const f = placeWords.roundFields;

/** How one number of a thing is shown and what it changes. */
const of =
  <T extends Surrounding>(thing: T) =>
  (
    label: string,
    as: RoundNumber['as'],
    value: number,
    change: (value: number) => Partial<T>,
  ): RoundNumber => ({ label, as, value, set: (v) => ({ ...thing, ...change(v) }) });

const east = ([, n]: Readonly<Spot>, e: number): Spot => [e, n];
const north = ([e]: Readonly<Spot>, n: number): Spot => [e, n];

function lineNumbers(line: Of<'wall'> | Of<'fence'> | Of<'hedge'>): RoundNumber[] {
  const number = of<Of<'wall'> | Of<'fence'> | Of<'hedge'>>(line);
  return [
    number(f.fromEast, 'site', line.from[0], (v) => ({ from: east(line.from, v) })),
    number(f.fromNorth, 'site', line.from[1], (v) => ({ from: north(line.from, v) })),
    number(f.toEast, 'site', line.to[0], (v) => ({ to: east(line.to, v) })),
    number(f.toNorth, 'site', line.to[1], (v) => ({ to: north(line.to, v) })),
    number(f.height, 'site', line.heightM, (v) => ({ heightM: v })),
    number(f.thickness, 'site', line.thicknessM, (v) => ({ thicknessM: v })),
  ];
}

function boxNumbers(box: Of<'box'>): RoundNumber[] {
  const number = of(box);
  const [wide, deep, high] = box.sizeM;
  const { ridgeHeightM } = box;
  return [
    number(f.east, 'site', box.centre[0], (v) => ({ centre: east(box.centre, v) })),
    number(f.north, 'site', box.centre[1], (v) => ({ centre: north(box.centre, v) })),
    number(f.wide, 'site', wide, (v) => ({ sizeM: [v, deep, high] })),
    number(f.deep, 'site', deep, (v) => ({ sizeM: [wide, v, high] })),
    number(f.height, 'site', high, (v) => ({ sizeM: [wide, deep, v] })),
    ...(ridgeHeightM === undefined
      ? []
      : [number(f.ridge, 'site', ridgeHeightM, (v) => ({ ridgeHeightM: v }))]),
    number(f.turned, 'bearing', box.turnedDeg, (v) => ({ turnedDeg: v })),
    number(f.reflectance, 'percent', box.reflectance, (v) => ({ reflectance: v })),
  ];
}

function crownNumbers(crown: Of<'crown'>): RoundNumber[] {
  const number = of(crown);
  const [wide, deep, high] = crown.halfSizeM;
  return [
    number(f.east, 'site', crown.centre[0], (v) => ({ centre: east(crown.centre, v) })),
    number(f.north, 'site', crown.centre[1], (v) => ({ centre: north(crown.centre, v) })),
    number(f.middleHeight, 'site', crown.centreHeightM, (v) => ({ centreHeightM: v })),
    number(f.halfWide, 'site', wide, (v) => ({ halfSizeM: [v, deep, high] })),
    number(f.halfDeep, 'site', deep, (v) => ({ halfSizeM: [wide, v, high] })),
    number(f.halfHigh, 'site', high, (v) => ({ halfSizeM: [wide, deep, v] })),
    number(f.leaves, 'leafDensity', crown.leafAreaDensityM2M3, (v) => ({ leafAreaDensityM2M3: v })),
  ];
}

/** What a line lets through or throws back. */
function lightNumbers(line: Of<'wall'> | Of<'fence'> | Of<'hedge'>): RoundNumber {
  if (line.kind === 'wall')
    return of(line)(f.reflectance, 'percent', line.reflectance, (v) => ({ reflectance: v }));
  if (line.kind === 'fence')
    return of(line)(f.open, 'percent', line.openFraction, (v) => ({ openFraction: v }));
  return of(line)(f.leaves, 'leafDensity', line.leafAreaDensityM2M3, (v) => ({ leafAreaDensityM2M3: v }));
}

export function roundNumbers(one: Surrounding): RoundNumber[] {
  if (isLine(one)) return [...lineNumbers(one), lightNumbers(one)];
  return one.kind === 'box' ? boxNumbers(one) : crownNumbers(one);
}
