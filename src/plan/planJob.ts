/** From a tree to its cut list: rules, search, tips, and what each cut brings. */
import { type JobSteps, within } from './errand.ts';
import { type FoundWork, findWork } from './findWork.ts';
import { cutEnds, goneIds } from './gone.ts';
import type { PlanInput } from './input.ts';
import { type Chosen, type RoundsInput, type Thinned, thinInRounds } from './rounds.ts';
import { type ToldPlan, tellPlan } from './tellPlan.ts';
import { type Doubt, judgePlan } from './worlds/judgePlan.ts';
import { type WeighedWork, weighRules } from './worlds/weighRules.ts';
import { limitsOfForm } from './yearlyLimit.ts';

export interface PlanResult extends ToldPlan {
  /** For `replanJob`: what the plan was made from. */
  readonly made: MadePlan;
}

export interface MadePlan {
  readonly input: PlanInput;
  readonly work: WeighedWork;
  readonly found: Thinned;
  readonly told: ToldPlan;
}

/**
 * Makes the plan for a day. Yields progress at once and often; deterministic in its input.
 * Rules first, each on the tree the ones before leave; then the search over what is left, in rounds with regrowth; in rest
 * the tips. What stands in too few worlds is told apart and not counted. "Do nothing" is scored on its own canopy, the plan on its own
 * regrown one, with the same rays.
 * @param wantsFirst whether a first plan is told, as the `first` of a step, before it is tried in worlds
 */
export function* planJob(given: PlanInput, wantsFirst = false): JobSteps<PlanResult> {
  const input = { ...given, values: limitsOfForm(given.values) };
  yield { done: 0, doing: 'Looking at the wood' };
  const work = yield* weighedWork(input);
  const rounds = roundsOf(input, work);
  const tellFirst = (found: Thinned): JobSteps<void> => firstTold(given, input, work, found);
  const found = yield* thinInRounds(wantsFirst ? { ...rounds, tellFirst } : rounds);
  const told = yield* within(tellPlan(input, work, found), 0.92, 1);
  return { ...told, made: { input: given, work, found, told } };
}

/** A plan of which it is not known yet how sure it is. */
function* firstTold(given: PlanInput, input: PlanInput, work: WeighedWork, found: Thinned): JobSteps<void> {
  const told = yield* tellPlan(input, work, found, { isFirst: true });
  const first: PlanResult = { ...told, made: { input: given, work, found, told } };
  yield { done: 1, doing: 'Trying the plan in plausible trees and years', first };
}

/** The rules' cuts, without those that stand in too few worlds. */
function* weighedWork(input: PlanInput): JobSteps<WeighedWork> {
  const work = yield* findWork(input);
  const worlds = input.worlds ?? 0;
  const standsIn = yield* within(weighRules(input, work, worlds), 0, 0.02);
  const least = input.values.yourCallBelowShare * worlds;
  const leave = new Set([...standsIn].filter(([, { stands }]) => stands < least).map(([id]) => id));
  return { ...(leave.size === 0 ? work : yield* findWork(input, { year: work.year, leave })), standsIn };
}

export function roundsOf(input: PlanInput, work: FoundWork): RoundsInput {
  const { settled, tips, yourCall, choice, year } = work;
  const judge = (chosen: Chosen): JobSteps<Doubt> => judgePlan(inWorlds(input, work, chosen));
  return {
    plan: input,
    season: year.season,
    candidates: choice.free,
    pinned: choice.pinned,
    settled: goneIds(input.tree, settled),
    ends: cutEnds([...settled, ...tips, ...yourCall]),
    ...((input.worlds ?? 0) > 0 && { judge }),
  };
}

function inWorlds(
  input: PlanInput,
  { settled, tips, choice, year }: FoundWork,
  { thinned, taken, rivals, asked }: Chosen,
) {
  return {
    task: {
      input,
      budBreakOn: year.season.budBreakOn,
      stage: year.stage,
      lights: {
        season: thinned.light,
        stages: thinned.stages.map(({ stage, light }) => ({ name: stage.name, light })),
      },
      settled: [...settled, ...tips].map(({ kind, target, atM }) => ({ kind, target, atM })),
    },
    worlds: input.worlds ?? 0,
    yourCallBelowShare: input.values.yourCallBelowShare,
    candidates: choice.free,
    taken,
    rivals,
    asked,
  };
}
