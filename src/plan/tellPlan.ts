/** From what goes to the plan: what each cut brings, its reasons, the score, the remarks. */
import type { Candidate } from './candidates.ts';
import type { Cut } from './cut.ts';
import { describeCut } from './describeCut.ts';
import type { JobSteps } from './errand.ts';
import type { FoundWork } from './findWork.ts';
import { type CutEffect, cutEffects } from './gains.ts';
import type { PlanInput } from './input.ts';
import { inPasses } from './passes.ts';
import { advisePinch } from './pinchPlan.ts';
import type { Plan } from './plan.ts';
import { leafShareRemoved, planRemarks } from './planRemarks.ts';
import { ofCandidate, ofFault, type Proposal } from './proposal.ts';
import { searchReasons } from './reasons.ts';
import { remarkText } from './remarks.ts';
import { renewalWays } from './renewal.ts';
import type { Thinned } from './rounds.ts';
import { ruleContext } from './ruleContext.ts';
import { workSteps } from './steps.ts';
import { type TrialContext, trialContext, tryThese } from './trial.ts';
import type { WorkYear } from './windows.ts';

export interface ToldPlan {
  readonly plan: Plan;
  /** For `tryCuts`: what if only these were made? */
  readonly trial: TrialContext;
}

export function* tellPlan(input: PlanInput, work: FoundWork, found: Thinned): JobSteps<ToldPlan> {
  const { free, pinned } = work.choice;
  const tips = work.tips.cuts.map(ofFault);
  const proposals: Proposal[] = [
    ...work.settled,
    ...free.filter(({ id }) => found.taken.has(id)).map((one) => ofCandidate(one, null)),
    ...tips,
  ];
  yield { done: 0, doing: 'Weighing each cut' };
  const trial = trialContext(found.thinned, proposals, input, work.seasonYear);
  const effects = yield* collect(cutEffects(trial), proposals.length);
  const whole = tryThese(trial, proposals);
  const doNothing = tryThese(trialContext(found.asItIs, [], input, work.seasonYear), []).score;
  const kept = [...free.filter(({ id }) => !found.taken.has(id)), ...pinned];
  const cuts = inPasses(
    proposals.map((one, i) => toCut(input, work.year, one, effects[i] as CutEffect, kept)),
  );
  const remarks = planRemarks({
    ...work,
    input,
    context: ruleContext(input.tree, input.stance, input.values),
    tipRemarks: work.tips.remarks,
    woodCuts: proposals.filter(({ kind }) => kind !== 'rub off bud'),
    cutCount: cuts.length,
    thinningCount: found.taken.size,
    doNothing,
    plan: whole.score,
    figsHeld: found.thinned.crop.held,
    leafShareRemoved: leafShareRemoved(found.thinned, whole.keep, input.tree),
  }).map(remarkText);
  const steps = workSteps(trial, proposals);
  const pinch = advisePinch(trial, proposals, input, work.year);
  const score = { doNothing, plan: whole.score };
  const { search, choice } = found;
  const renewal = input.renewal === true ? { renewal: renewalWays(input, found.asItIs, work.year) } : {};
  return {
    plan: { date: input.date, cuts, steps, pinch, search, choice, ...renewal, score, remarks },
    trial,
  };
}

function* collect(effects: Generator<CutEffect, void, void>, count: number): JobSteps<CutEffect[]> {
  const found: CutEffect[] = [];
  for (const effect of effects) {
    found.push(effect);
    yield { done: found.length / count, doing: 'Weighing each cut' };
  }
  return found;
}

function toCut(
  input: PlanInput,
  year: WorkYear,
  one: Proposal,
  effect: CutEffect,
  kept: readonly Candidate[],
): Cut {
  const { candidate } = one;
  const reasons = candidate === null ? one.reasons : searchReasons(candidate, kept, effect, input.values);
  const { id, kind, target, atM } = one;
  return describeCut(
    { id, kind, target, atM, reasons, gain: effect.gain, ifKept: effect.ifKept },
    input,
    year,
  );
}
