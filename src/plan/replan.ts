/** The plan anew with other pins or another boldness, on the canopies of a plan already made: nothing is traced. */
import type { Tree } from '../geometry/tree.ts';
import type { JobSteps } from './errand.ts';
import { type FoundWork, findWork } from './findWork.ts';
import { cutEnds } from './gone.ts';
import type { PlanInput } from './input.ts';
import { type MadePlan, type PlanResult, planJob, roundsOf } from './planJob.ts';
import type { Proposal } from './proposal.ts';
import { type Thinned, thinAgain } from './rounds.ts';
import { tellPlan } from './tellPlan.ts';
import { grows } from './tracedSeason.ts';
import { limitsOfForm } from './yearlyLimit.ts';

export interface Replanned extends PlanResult {
  /**
   * True where other growth goes than the canopies were grown for: every kept shoot is as strong as the plan before made it. A
   * plan from scratch regrows them, and may find another set.
   */
  readonly isApproximate: boolean;
}

/**
 * The plan for an input that differs from that of a plan already made in pins and boldness alone, searched on from the set
 * of that plan. Any other input, and pins that shorten other branches, are planned from scratch.
 * In how many worlds a cut stands is told as it was found for the plan before; how far the figs may lie apart is not told.
 */
export function* replanJob(made: MadePlan, given: PlanInput, wantsFirst = false): JobSteps<Replanned> {
  if (!differsInPinsAlone(made.input, given))
    return { ...(yield* planJob(given, wantsFirst)), isApproximate: false };
  const input = { ...given, values: limitsOfForm(given.values) };
  const leave = new Set(made.work.yourCall.filter(isUnmarkedIn(input.tree)).map(({ id }) => id));
  const work = { ...(yield* findWork(input, { leave })), standsIn: made.work.standsIn };
  if (endsOf(work) !== endsOf(made.work))
    return { ...(yield* planJob(given, wantsFirst)), isApproximate: false };
  const again = yield* thinAgain(roundsOf(input, work), made.found);
  const isApproximate = grows(input) && !sameIds(goingOf(work, again), goingOf(made.work, made.found));
  const found = { ...again, search: { ...again.search, agreed: !isApproximate } };
  const told = yield* tellPlan(input, work, found, { before: made.told });
  return { ...told, isApproximate, made: { input: given, work, found, told } };
}

const goingOf = ({ settled }: FoundWork, { taken, doubt }: Thinned): ReadonlySet<string> =>
  new Set([...settled.map(({ target }) => target), ...[...taken].filter((id) => !doubt.yourCall.has(id))]);

/** What was left to the grower is so until they mark it. */
function isUnmarkedIn(tree: Tree): (cut: Proposal) => boolean {
  const marked = new Set(
    tree.axes.flatMap((axis) => [axis, ...axis.buds].filter(({ pin }) => pin !== null).map(({ id }) => id)),
  );
  return ({ target }) => !marked.has(target);
}

const sameIds = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean =>
  a.size === b.size && [...a].every((id) => b.has(id));

/** Where branches are shortened: the canopy was drawn with those ends. */
const endsOf = ({ settled, tips, yourCall }: FoundWork): string =>
  JSON.stringify(cutEnds([...settled, ...tips, ...yourCall]));

/** Whether two inputs are the same but for the grower's pins and the boldness. */
function differsInPinsAlone(a: PlanInput, b: PlanInput): boolean {
  return keyOf(a) === keyOf(b);
}

const keyOf = (input: PlanInput): string =>
  JSON.stringify({ ...input, boldness: null, tree: withoutPins(input.tree) });

const withoutPins = (tree: Tree): Tree => ({
  axes: tree.axes.map((axis) => ({
    ...axis,
    pin: null,
    buds: axis.buds.map((bud) => ({ ...bud, pin: null })),
  })),
});
