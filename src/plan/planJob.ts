/** From a tree to its cut list: rules, search, tips, and what each cut brings. */
import type { Candidate } from './candidates.ts';
import type { Cut } from './cut.ts';
import { describeCut } from './describeCut.ts';
import type { JobSteps } from './errand.ts';
import { findWork } from './findWork.ts';
import { type CutEffect, cutEffects } from './gains.ts';
import { cutEnds, goneIds } from './gone.ts';
import type { PlanInput } from './input.ts';
import { advisePinch } from './pinchPlan.ts';
import type { Plan } from './plan.ts';
import { leafShareRemoved, planRemarks } from './planRemarks.ts';
import { ofCandidate, ofFault, type Proposal } from './proposal.ts';
import { searchReasons } from './reasons.ts';
import { remarkText } from './remarks.ts';
import { renewalWays } from './renewal.ts';
import { thinInRounds } from './rounds.ts';
import { ruleContext } from './ruleContext.ts';
import { workSteps } from './steps.ts';
import { type TrialContext, trialContext, tryThese } from './trial.ts';
import type { WorkYear } from './windows.ts';
import { limitsOfForm } from './yearlyLimit.ts';

export interface PlanResult {
  readonly plan: Plan;
  /** For `tryCuts`: what if only these were made? */
  readonly trial: TrialContext;
}

/**
 * Makes the plan for a day. Yields progress at once and often; deterministic in its input.
 * Rules first, each on the tree the ones before leave; then the search over what is left, in rounds with regrowth; in rest
 * the tips. "Do nothing" is scored on its own canopy, the plan on its own regrown one, with the same rays.
 */
export function* planJob(given: PlanInput): JobSteps<PlanResult> {
  const input = { ...given, values: limitsOfForm(given.values) };
  yield { done: 0, doing: 'Looking at the wood' };
  const work = yield* findWork(input);
  const { free, pinned } = work.choice;
  const { season } = work.year;
  const tips = work.tips.cuts.map(ofFault);
  const settled = goneIds(input.tree, work.settled);
  const ends = cutEnds([...work.settled, ...tips]);
  const found = yield* thinInRounds({ plan: input, season, candidates: free, pinned, settled, ends });
  const proposals: Proposal[] = [
    ...work.settled,
    ...free.filter(({ id }) => found.taken.has(id)).map((one) => ofCandidate(one, null)),
    ...tips,
  ];
  yield { done: 0.92, doing: 'Weighing each cut' };
  const trial = trialContext(found.thinned, proposals, input, work.seasonYear);
  const effects = yield* collect(cutEffects(trial), proposals.length);
  const whole = tryThese(trial, proposals);
  const doNothing = tryThese(trialContext(found.asItIs, [], input, work.seasonYear), []).score;
  const kept = [...free.filter(({ id }) => !found.taken.has(id)), ...pinned];
  const cuts = proposals.map((one, i) => toCut(input, work.year, one, effects[i] as CutEffect, kept));
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
    yield { done: 0.92 + (0.08 * found.length) / count, doing: 'Weighing each cut' };
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
  return describeCut({ id, kind, target, atM, reasons, gain: effect.gain }, input, year);
}
