/** From what goes to the plan: what each cut brings, its reasons, the score, the remarks. */
import type { Candidate } from './candidates.ts';
import type { Cut } from './cut.ts';
import { describeCut } from './describeCut.ts';
import type { JobSteps } from './errand.ts';
import { type CutEffect, cutEffects } from './gains.ts';
import type { PlanInput } from './input.ts';
import { inPasses } from './passes.ts';
import { advisePinch } from './pinchPlan.ts';
import type { Plan } from './plan.ts';
import { leafShareRemoved, planRemarks } from './planRemarks.ts';
import { ofCandidate, type Proposal } from './proposal.ts';
import { searchReasons } from './reasons.ts';
import { remarkText } from './remarks.ts';
import { renewalWays } from './renewal.ts';
import type { Thinned } from './rounds.ts';
import { ruleContext } from './ruleContext.ts';
import type { Score } from './score.ts';
import { type WorkStep, workSteps } from './steps.ts';
import { type TrialContext, type Tried, trialContext, tryThese } from './trial.ts';
import type { WorkYear } from './windows.ts';
import type { WeighedWork } from './worlds/weighRules.ts';

export interface ToldPlan {
  readonly plan: Plan;
  /** For `tryCuts`: what if only these were made? */
  readonly trial: TrialContext;
}

interface Telling {
  /** A plan told from the same rays, for other cuts. */
  readonly before?: ToldPlan;
  /** Before it was tried in worlds: which buds go in which pass is open. */
  readonly isFirst?: boolean;
}

export function* tellPlan(
  input: PlanInput,
  work: WeighedWork,
  found: Thinned,
  { before, isFirst = false }: Telling = {},
): JobSteps<ToldPlan> {
  const { free, pinned } = work.choice;
  const { taken, doubt } = found;
  const sought = free.filter(({ id }) => taken.has(id)).map((one) => ofCandidate(one, null));
  const isCall = ({ target }: Proposal): boolean => doubt.yourCall.has(target);
  const planned = [...work.settled, ...sought.filter((one) => !isCall(one)), ...work.tips];
  const calls = [...work.yourCall, ...sought.filter(isCall)];
  const proposals = [...planned, ...calls];
  yield { done: 0, doing: 'Weighing each cut' };
  const also = [...free, ...pinned].map(({ id }) => id);
  const tables = { also, before: before?.trial ?? null };
  const trial = trialContext(found.thinned, proposals, input, work.seasonYear, planned, tables);
  const effects = yield* collect(cutEffects(trial), proposals.length);
  const whole = tryThese(trial, planned);
  const asItIs = (): TrialContext =>
    found.asItIs === found.thinned ? trial : trialContext(found.asItIs, [], input, work.seasonYear);
  const doNothing = before?.plan.score.doNothing ?? tryThese(asItIs(), []).score;
  const withYourCall = calls.length === 0 ? null : tryThese(trial, proposals).score;
  const told = toCuts(input, work, found, { proposals, effects, isFirst });
  const { search, choice } = found;
  const renewal =
    input.renewal === true && !isFirst ? { renewal: renewalWays(input, found.asItIs, work.year) } : {};
  const steps = workSteps(trial, planned);
  const plan: Plan = {
    date: input.date,
    cuts: inPasses(told.slice(0, planned.length)),
    yourCall: told.slice(planned.length),
    confidence: doubt.confidence,
    steps,
    pinch: advisePinch(trial, planned, input, work.year),
    search,
    choice,
    ...renewal,
    score: { doNothing, plan: whole.score, withYourCall },
    remarks: remarksOn(input, work, found, { planned, proposals, doNothing, whole, steps }),
  };
  return { plan, trial };
}

interface Weighing {
  readonly proposals: readonly Proposal[];
  readonly effects: readonly CutEffect[];
  readonly isFirst: boolean;
}

function toCuts(
  input: PlanInput,
  work: WeighedWork,
  { taken, doubt }: Thinned,
  { proposals, effects, isFirst }: Weighing,
): Cut[] {
  const { free, pinned } = work.choice;
  const kept = [...free.filter(({ id }) => !taken.has(id)), ...pinned];
  return proposals.map((one, i) => {
    const standsIn = one.candidate === null ? work.standsIn.get(one.id) : doubt.standsIn.get(one.target);
    const effect = { ...(effects[i] as CutEffect), standsIn: standsIn ?? null };
    return toCut(input, work.year, one, effect, { kept, isFirst });
  });
}

interface Weighed {
  readonly planned: readonly Proposal[];
  /** With those that are the grower's call. */
  readonly proposals: readonly Proposal[];
  readonly doNothing: Score;
  readonly whole: Tried;
  readonly steps: readonly WorkStep[];
}

function remarksOn(
  input: PlanInput,
  work: WeighedWork,
  { thinned, search }: Thinned,
  { planned, proposals, doNothing, whole, steps }: Weighed,
): string[] {
  return planRemarks({
    ...work,
    input,
    context: ruleContext(input.tree, input.stance, input.values),
    woodCuts: planned.filter(({ kind }) => kind !== 'rub off bud'),
    proposedWoodCuts: proposals.filter(({ kind }) => kind !== 'rub off bud'),
    cutCount: planned.length,
    thinningCount: planned.filter(({ candidate }) => candidate !== null).length,
    doNothing,
    plan: whole.score,
    steps,
    broken: search.broken,
    figsHeld: thinned.crop.held,
    leafShareRemoved: leafShareRemoved(thinned, whole.keep, input.tree),
  }).map(remarkText);
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
  effect: CutEffect & Pick<Cut, 'standsIn'>,
  { kept, isFirst }: { readonly kept: readonly Candidate[]; readonly isFirst: boolean },
): Cut {
  const { candidate } = one;
  const reasons = candidate === null ? one.reasons : searchReasons(candidate, kept, effect, input.values);
  const { id, kind, target, atM } = one;
  const { gain, ifKept, standsIn } = effect;
  return describeCut({ id, kind, target, atM, reasons, gain, ifKept, standsIn }, input, year, isFirst);
}
