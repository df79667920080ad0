/** From a tree to its cut list: rules, search, tips, and what each cut brings. */
import { type JobSteps, within } from './errand.ts';
import { type FoundWork, findWork } from './findWork.ts';
import { cutEnds, goneIds } from './gone.ts';
import type { PlanInput } from './input.ts';
import { type Thinned, thinInRounds } from './rounds.ts';
import { type ToldPlan, tellPlan } from './tellPlan.ts';

import { limitsOfForm } from './yearlyLimit.ts';

export interface PlanResult extends ToldPlan {
  /** For `replanJob`: what the plan was made from. */
  readonly made: MadePlan;
}

export interface MadePlan {
  readonly input: PlanInput;
  readonly work: FoundWork;
  readonly found: Thinned;
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
  const settled = goneIds(input.tree, work.settled);
  const ends = cutEnds([...work.settled, ...work.tips.cuts]);
  const found = yield* thinInRounds({ plan: input, season, candidates: free, pinned, settled, ends });
  const told = yield* within(tellPlan(input, work, found), 0.92, 1);
  return { ...told, made: { input: given, work, found } };
}
