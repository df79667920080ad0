/** What a branch may measure: the bounds of the tree file, with the words for a figure outside them. */

export type FigureName =
  | 'lengthM'
  | 'atM'
  | 'baseDiameterM'
  | 'tipDiameterM'
  | 'bearingDeg'
  | 'fromUprightDeg'
  | 'leafCount'
  | 'budCount'
  | 'midribM'
  | 'copies'
  | 'setCount'
  | 'spacingM'
  | 'aroundDeg';

interface Limit {
  readonly min: number;
  readonly max: number;
  readonly words: string;
  readonly range: string;
  readonly whole?: boolean;
}

/** Lengths in metres, angles in degrees. A path may reach 12 m; the rest are the bounds of the schema. */
export const limits: Readonly<Record<FigureName, Limit>> = {
  lengthM: { min: 0.005, max: 12, words: 'The length', range: '5 mm to 12 m' },
  atM: {
    min: 0,
    max: 50,
    words: 'The distance along the branch it grows from',
    range: '0 to the length of that branch',
  },
  baseDiameterM: { min: 0.0005, max: 2, words: 'The thickness at the base', range: '0.5 mm to 2 m' },
  tipDiameterM: { min: 0.0005, max: 2, words: 'The thickness at the tip', range: '0.5 mm to 2 m' },
  bearingDeg: { min: 0, max: 360, words: 'The side', range: '0 to 360 degrees' },
  fromUprightDeg: {
    min: 0,
    max: 180,
    words: 'The angle from upright',
    range: '0 (straight up) to 180 degrees',
  },
  leafCount: { min: 0, max: 200, words: 'The number of leaves', range: '0 to 200', whole: true },
  budCount: { min: 0, max: 200, words: 'The number of buds', range: '0 to 200', whole: true },
  copies: { min: 2, max: 12, words: 'The number of limbs in all', range: '2 to 12', whole: true },
  setCount: { min: 1, max: 200, words: 'The number to set', range: '1 to 200', whole: true },
  spacingM: { min: 0.002, max: 2, words: 'The distance from one to the next', range: '2 mm to 2 m' },
  aroundDeg: { min: 0, max: 360, words: 'The turn round the wood', range: '0 to 360 degrees' },
  midribM: { min: 0.01, max: 0.6, words: 'The leaf size (midrib)', range: '1 to 60 cm' },
};

/** Why a figure cannot be used, or null when it can. */
export function outside(name: FigureName, value: number): string | null {
  const { min, max, words, range, whole } = limits[name];
  if (Number.isFinite(value) && value >= min && value <= max && (!whole || Number.isInteger(value)))
    return null;
  return `${words} must be ${whole ? 'a whole number, ' : ''}${range}.`;
}

/** The first complaint about any of these figures, or null. */
export function anyOutside(figures: Partial<Record<FigureName, number | undefined>>): string | null {
  for (const [name, value] of Object.entries(figures)) {
    const complaint = value === undefined ? null : outside(name as FigureName, value);
    if (complaint !== null) return complaint;
  }
  return null;
}
