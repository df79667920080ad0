/** The cuts by the step of work they belong to, and within it by the branch one goes to. */
import type { Cut } from '../../../plan/cut.ts';
import type { Plan } from '../../../plan/plan.ts';
import { type StepName, stepOf, type WorkStep } from '../../../plan/steps.ts';

export interface NumberedCut {
  readonly cut: Cut;
  /** Its number in the list and on the stage, from 1. */
  readonly n: number;
}

/** All cuts with their numbers: the advised ones, then those that are the grower's call. */
export const numbered = ({ cuts, yourCall }: Pick<Plan, 'cuts' | 'yourCall'>): readonly NumberedCut[] =>
  [...cuts, ...yourCall].map((cut, i) => ({ cut, n: i + 1 }));

export interface CutGroup {
  readonly step: StepName;
  /** Of the buds that are rubbed off in two passes, which. */
  readonly pass: Cut['pass'];
  /** How figs and light stand when this step is done; null where it is not told, or not done yet. */
  readonly after: WorkStep | null;
  /** Cuts on the same branch that follow each other. */
  readonly runs: readonly { readonly branch: string; readonly cuts: readonly NumberedCut[] }[];
}

/** In the order of the list, which is that of the work, numbered from `firstN`. */
export function groupCuts({ cuts, steps }: Pick<Plan, 'cuts' | 'steps'>, firstN = 1): readonly CutGroup[] {
  const groups: { step: StepName; pass: Cut['pass']; runs: { branch: string; cuts: NumberedCut[] }[] }[] = [];
  cuts.forEach((cut, i) => {
    const step = stepOf(cut.kind, cut.reasons);
    let group = groups.at(-1);
    if (group?.step !== step || group.pass !== cut.pass)
      groups.push((group = { step, pass: cut.pass, runs: [] }));
    const { branch } = cut.place;
    let run = group.runs.at(-1);
    if (run?.branch !== branch) group.runs.push((run = { branch, cuts: [] }));
    run.cuts.push({ cut, n: i + firstN });
  });
  return groups.map((group, i) => {
    const goesOn = groups.slice(i + 1).some(({ step }) => step === group.step);
    return { ...group, after: goesOn ? null : (steps.find(({ step }) => step === group.step) ?? null) };
  });
}
