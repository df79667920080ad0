/** Visible text of starting from a form. */
import type { FormFigure, FormName } from '../../../../editor/forms/formFigures.ts';

const usual: Readonly<Record<FormFigure, string>> = {
  trunkM: 'Trunk to the first fork',
  limbs: 'Limbs',
  spreadM: 'Spread, limb tip to limb tip',
  laterals: 'Laterals on each limb',
  shoots: 'Shoots on the tree',
  shootM: 'Length of a shoot',
  towardsDeg: 'The first limb points',
};

const flat = { limbs: 'Arms', towardsDeg: 'The arms run' };

const special: Readonly<Partial<Record<FormName, Partial<Record<FormFigure, string>>>>> = {
  'hard-pruned-vase': { limbs: 'Arms', laterals: 'Winters in which the arms were doubled' },
  bush: {
    trunkM: 'Stump',
    limbs: 'Stems',
    laterals: 'Laterals on each stem',
    towardsDeg: 'The first stem points',
  },
  fan: { ...flat, laterals: 'Ribs on each side', spreadM: 'Width, arm tip to arm tip' },
  cordon: { ...flat, spreadM: 'Width, arm tip to arm tip' },
  'step-over': { ...flat, spreadM: 'Width, arm tip to arm tip' },
  'bare-stem': { trunkM: 'Height' },
};

export const startWords = {
  start: 'Start from a form',
  headline: 'Which form is it nearest to?',
  lead: 'Set it roughly, then change it branch by branch. One Undo brings your tree back.',
  forms: 'Form',
  about: {
    'open-vase': 'Limbs round an open centre',
    'single-stem': 'A small tree, often in a pot',
    'hard-pruned-vase': 'Cut to stubs each winter',
    bush: 'Many stems from the soil',
    fan: 'Flat, on a wall',
    cordon: 'Level arms, upright shoots',
    'step-over': 'The same, knee-high',
    'bare-stem': 'Nothing but a stem',
  } satisfies Readonly<Record<FormName, string>>,
  growth: 'What stands on it',
  growths: { shoots: 'Shoots in leaf', buds: 'Buds' },
  figure: (form: FormName, figure: FormFigure): string => special[form]?.[figure] ?? usual[figure],
  /** The same in the plural of what stands on it. */
  buds: 'Buds on the tree',
  another: 'Another',
  anotherTitle: 'Another tree of the same figures',
  take: 'Take this tree',
  back: 'Back',
  backTitle: 'Back to the open tree',
  started: (title: string) => `Started a new tree: ${title}`,
  sources: 'Where these measures come from',
  from: (min: string, max: string) => `${min} to ${max}`,
} as const;
