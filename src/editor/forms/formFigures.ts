/** The forms a sketch can begin from, and how far their figures may be set. */
import { figForms } from '../../species/fig/forms.ts';
import type { Parameter } from '../../species/parameter.ts';

export const formNames = [
  'open-vase',
  'single-stem',
  'hard-pruned-vase',
  'bush',
  'fan',
  'cordon',
  'step-over',
  'bare-stem',
] as const;
export type FormName = (typeof formNames)[number];

/** Those that are trained flat. */
export const flatForms: readonly FormName[] = ['fan', 'cordon', 'step-over'];

export interface FormFigures {
  /** Height of the first fork above the soil; of a bare stem its whole height. */
  readonly trunkM: number;
  /** Limbs, stems or arms from the trunk. */
  readonly limbs: number;
  /** From limb tip to limb tip, seen from above, without this season's shoots; of one arm its length. */
  readonly spreadM: number;
  /** Laterals on each limb, ribs on each side of a fan, or how often a hard-pruned vase was doubled. */
  readonly laterals: number;
  /** This season's shoots, or buds, on the whole tree. */
  readonly shoots: number;
  /** About how long they are. */
  readonly shootM: number;
  /** Bearing of the first limb, or of the arms. */
  readonly towardsDeg: number;
}

export type FormFigure = keyof FormFigures;

export interface FormRange {
  readonly min: number;
  readonly max: number;
  readonly start: number;
  /** Empty where every value is as good as another. */
  readonly source: string;
}

export type FormRanges = Readonly<Record<FormFigure, FormRange>>;

const counted = ({ min, max, value, source }: Parameter): FormRange => ({ min, max, start: value, source });
const inM = ({ min, max, value, source }: Parameter): FormRange => ({
  min: min / 100,
  max: max / 100,
  start: value / 100,
  source,
});
const none: FormRange = { min: 0, max: 0, start: 0, source: '' };
const two: FormRange = { min: 2, max: 2, start: 2, source: '' };
const anySide: FormRange = { min: 0, max: 359, start: 40, source: '' };
const eastWest: FormRange = { ...anySide, start: 90 };

const f = figForms;
const free = {
  limbs: counted(f.scaffolds),
  laterals: counted(f.laterals),
  shoots: counted(f.shoots),
  shootM: inM(f.shootLength),
  towardsDeg: anySide,
};

/** As many shoots as stand along the arms at the usual distance. */
const arms = {
  limbs: counted(f.arms),
  spreadM: {
    ...inM(f.armLength),
    max: (2 * f.armLength.max) / 100,
    start: (2 * f.armLength.value) / 100,
  },
  laterals: none,
  shoots: {
    min: 0,
    max: Math.floor((2 * f.armLength.max) / f.shootGap.value),
    start: Math.round((2 * f.armLength.value) / f.shootGap.value),
    source: f.shootGap.source,
  },
  shootM: inM(f.uprightShootLength),
  towardsDeg: eastWest,
};

export const formRanges: Readonly<Record<FormName, FormRanges>> = {
  'open-vase': { ...free, trunkM: inM(f.vaseTrunk), spreadM: inM(f.vaseSpread) },
  'single-stem': { ...free, trunkM: inM(f.stemTrunk), spreadM: inM(f.stemSpread) },
  'hard-pruned-vase': {
    ...free,
    trunkM: inM(f.stubTrunk),
    limbs: counted(f.stubArms),
    spreadM: inM(f.stubSpread),
    laterals: counted(f.doublings),
    shoots: counted(f.stubShoots),
  },
  bush: { ...free, trunkM: inM(f.bushTrunk), limbs: counted(f.stems), spreadM: inM(f.bushSpread) },
  fan: {
    ...free,
    trunkM: inM(f.fanTrunk),
    limbs: two,
    spreadM: inM(f.fanSpread),
    laterals: counted(f.ribs),
    shootM: inM(f.sideShootLength),
    towardsDeg: eastWest,
  },
  cordon: { ...arms, trunkM: inM(f.cordonTrunk) },
  'step-over': { ...arms, trunkM: inM(f.lowTrunk) },
  'bare-stem': {
    ...free,
    trunkM: inM(f.bareTrunk),
    limbs: none,
    spreadM: none,
    laterals: none,
    shoots: { ...counted(f.shoots), max: 40, start: 0 },
  },
};

export const startFigures = (form: FormName): FormFigures => {
  const { trunkM, limbs, spreadM, laterals, shoots, shootM, towardsDeg } = formRanges[form];
  return {
    trunkM: trunkM.start,
    limbs: limbs.start,
    spreadM: spreadM.start,
    laterals: laterals.start,
    shoots: shoots.start,
    shootM: shootM.start,
    towardsDeg: towardsDeg.start,
  };
};

/** The first figure that lies outside its range, or null. Counts must be whole. */
export function formFigureOutside(form: FormName, figures: FormFigures): FormFigure | null {
  const wrong = Object.entries(formRanges[form]).find(([name, { min, max }]) => {
    const value = figures[name as FormFigure];
    const isCount = name === 'limbs' || name === 'laterals' || name === 'shoots';
    return !(value >= min - 1e-9 && value <= max + 1e-9) || (isCount && !Number.isInteger(value));
  });
  return wrong === undefined ? null : (wrong[0] as FormFigure);
}
