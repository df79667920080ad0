/** From a tree to its cut list: rules, search, tips, and what each cut brings. */
import { yearOf } from '../season/calendar.ts';
import type { CutToMake } from './applyCuts.ts';
import { type Candidate, candidatesOf } from './candidates.ts';
import type { Cut, Reason } from './cut.ts';
import { describeCut } from './describeCut.ts';
import type { JobSteps } from './errand.ts';
import { type Fault, findFaults } from './faults.ts';
import { type CutEffect, cutEffects } from './gains.ts';
import { cutEnds, goneIds } from './gone.ts';
import type { PlanInput } from './input.ts';
import { advisePinch } from './pinchPlan.ts';
import type { Plan } from './plan.ts';
import { leafShareRemoved, planRemarks } from './planRemarks.ts';
import { searchReasons } from './reasons.ts';
import { remarkText } from './remarks.ts';
import { renewalWays } from './renewal.ts';
import { thinInRounds } from './rounds.ts';
import { ruleContext, standsInLeaf } from './ruleContext.ts';
import { workSteps } from './steps.ts';
import { proposeTips, type Tips } from './tips.ts';
import { type TrialContext, trialContext, tryThese } from './trial.ts';
import { type WorkYear, workYear } from './windows.ts';
import { limitsOfForm } from './yearlyLimit.ts';

export interface PlanResult {
  readonly plan: Plan;
  /** For `tryCuts`: what if only these were made? */
  readonly trial: TrialContext;
}

/** A cut before its effect is known. */
interface Proposal extends CutToMake {
  readonly id: string;
  /** Set when the search took it. */
  readonly candidate: Candidate | null;
  readonly reasons: readonly Reason[];
}

/**
 * Makes the plan for a day. Yields progress at once and often; deterministic in its input.
 * Rules first, each on the tree the ones before leave; then the search over what is left, in rounds with regrowth; in rest
 * the tips. "Do nothing" is scored on its own canopy, the plan on its own regrown one, with the same rays.
 */
export function* planJob(given: PlanInput): JobSteps<PlanResult> {
  const input = { ...given, values: limitsOfForm(given.values) };
  yield { done: 0, doing: 'Looking at the wood' };
  const work = yield* workOn(input);
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
    leafShareRemoved: leafShareRemoved(found.thinned, whole.keep),
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

/** All that is settled before any light is traced. */
function* workOn(input: PlanInput) {
  const year = workYear(input);
  const seasonYear = yearOf(year.season.budBreakOn);
  yield { done: 0, doing: 'Looking at the wood' };
  const faults = findFaults(input.tree, input.stance, input.values);
  yield { done: 0, doing: 'Looking at the wood' };
  const context = ruleContext(faults.after, input.stance, input.values);
  const choice = sortCandidates(candidatesOf(context, year.stage));
  const tips: Tips =
    year.stage === 'rest' && !standsInLeaf(input.tree)
      ? proposeTips(context, seasonYear, input.bearsFirstCrop)
      : { cuts: [], remarks: [] };
  const below = choice.below.map((one) => ofCandidate(one, [{ rule: 'below the fork' }]));
  return { year, seasonYear, faults, choice, tips, settled: [...faults.cuts.map(ofFault), ...below] };
}

interface Choice {
  readonly free: readonly Candidate[];
  readonly pinned: readonly Candidate[];
  readonly below: readonly Candidate[];
}

function sortCandidates(candidates: readonly Candidate[]): Choice {
  return {
    pinned: candidates.filter((one) => one.pinnedKeep),
    below: candidates.filter((one) => !one.pinnedKeep && one.belowFork),
    free: candidates.filter((one) => !one.pinnedKeep && !one.belowFork),
  };
}

/** Stable: made of kind and target. */
const cutId = (kind: Cut['kind'], target: string): string => `${kind.replaceAll(' ', '-')}:${target}`;

const ofFault = ({ kind, target, atM, reasons }: Fault): Proposal => ({
  id: cutId(kind, target),
  kind,
  target,
  atM,
  candidate: null,
  reasons,
});

const ofCandidate = (candidate: Candidate, reasons: readonly Reason[] | null): Proposal => ({
  id: cutId(candidate.kind, candidate.id),
  kind: candidate.kind,
  target: candidate.id,
  atM: 0,
  candidate: reasons === null ? candidate : null,
  reasons: reasons ?? [],
});

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
