/** The work step by step: how the light and the figs stand after each. */
import type { CutKind, Reason } from './cut.ts';
import { type TrialContext, type TrialCut, tryThese } from './trial.ts';

/** In the order of work. */
const stepsInOrder = [
  'before the cuts',
  'marked to go',
  'dead and sick wood',
  'suckers',
  'crossing',
  'inward and water sprouts',
  'narrow forks',
  'below the fork',
  'crowding',
  'tips',
] as const;

export type StepName = (typeof stepsInOrder)[number];

export interface WorkStep {
  readonly step: StepName;
  /** Cuts of this step alone. */
  readonly cuts: number;
  /** With the cuts of this and of all earlier steps made: ripe figs of the main crop, and mean light of the shoots that stand. */
  readonly ripeFigs: number;
  readonly meanLight: number;
}

export type StepCut = TrialCut & { readonly reasons: readonly Reason[] };

/**
 * The plan's canopy, with its cuts made step by step; first with none made. Steps without a cut are left out. Between these
 * the light alone changes, not the vigour: see `trial.ts` for what that leaves out.
 */
export function workSteps(context: TrialContext, cuts: readonly StepCut[]): readonly WorkStep[] {
  const made: StepCut[] = [];
  return stepsInOrder.flatMap((step): WorkStep[] => {
    const ofStep = cuts.filter(({ kind, reasons }) => stepOf(kind, reasons) === step);
    if (ofStep.length === 0 && step !== 'before the cuts') return [];
    made.push(...ofStep);
    const { ripeFigs, meanLight } = tryThese(context, made).score;
    return [{ step, cuts: ofStep.length, ripeFigs, meanLight }];
  });
}

/** The step a cut belongs to: the first reason is that of the earliest rule; cuts of the search come without, or as crowding. */
export function stepOf(kind: CutKind, [first]: readonly Reason[]): StepName {
  if (kind === 'tip') return 'tips';
  switch (first?.rule) {
    case 'pinned':
      return 'marked to go';
    case 'dead':
    case 'diseased':
    case 'damaged':
      return 'dead and sick wood';
    case 'sucker':
      return 'suckers';
    case 'crossing':
      return 'crossing';
    case 'inward':
    case 'water sprout':
      return 'inward and water sprouts';
    case 'narrow fork':
      return 'narrow forks';
    case 'below the fork':
      return 'below the fork';
    default:
      return 'crowding';
  }
}
