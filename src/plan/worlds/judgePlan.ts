/** A plan in many worlds: in how many of them each cut of the search stands, and between what limits the figs lie. */
import type { Candidate } from '../candidates.ts';
import { fetchTask, type JobSteps } from '../errand.ts';
import type { WorldFindings, WorldTask } from './judgeWorld.ts';
import { type Confidence, rangeOf, type StandsIn } from './standsIn.ts';

/** Tasks that may be begun before they are fetched. */
const mostAhead = 8;
/** Differences below this are rounding, figs. */
const rounding = 1e-9;

export interface PlanInWorlds {
  readonly task: Omit<WorldTask, 'at' | 'world' | 'free' | 'taken' | 'rivals' | 'withNothing' | 'every'>;
  readonly worlds: number;
  readonly yourCallBelowShare: number;
  readonly candidates: readonly Candidate[];
  readonly taken: ReadonlySet<string>;
  /** Of those taken: who might go in its place. */
  readonly rivals: ReadonlyMap<string, string>;
  /** Taken because the grower asked for more than the best set: never their call, they have made it. */
  readonly asked: ReadonlySet<string>;
}

export interface Doubt {
  /** By id of the bud or shoot. */
  readonly standsIn: ReadonlyMap<string, StandsIn>;
  /** Ids taken by the search that are the grower's call. */
  readonly yourCall: ReadonlySet<string>;
  readonly confidence: Confidence | null;
}

export const noDoubt: Doubt = { standsIn: new Map(), yourCall: new Set(), confidence: null };

/**
 * Directions of sky and sun that a world looks along: one in so many, about twenty; which ones changes from world to world. With all of
 * them counts of 32 move by 1 in the mean and 3 at most (docs/model.md, 9.10).
 */
const every = 16;

export function* judgePlan(given: PlanInWorlds): JobSteps<Doubt> {
  const { worlds, candidates, taken, rivals, asked, yourCallBelowShare } = given;
  const ids = candidates.map(({ id }) => id).filter((id) => taken.has(id));
  const rivalOf = ids.map((id) => rivals.get(id) ?? null);
  const found = yield* inWorlds(given, ids, rivalOf, true, 0, 0.7);
  const byId = new Map(candidates.map((one) => [one.id, one]));
  const standsIn = new Map(
    ids.map((id, i): [string, StandsIn] => {
      const rival = byId.get(rivalOf[i] ?? '');
      const count = (of: (findings: WorldFindings) => number | null | undefined): number =>
        found.filter((findings) => (of(findings) ?? Number.NEGATIVE_INFINITY) >= -rounding).length;
      const stands = count(({ overKeeping }) => overKeeping[i]);
      const atM = rival?.bud?.atM ?? null;
      const inPlace = rival === undefined ? null : { target: rival.id, branch: rival.axis.axis.name, atM };
      return [
        id,
        { worlds, stands, rival: inPlace && { ...inPlace, stands: count(({ overRival }) => overRival[i]) } },
      ];
    }),
  );
  const isCall = (id: string): boolean =>
    !asked.has(id) && (standsIn.get(id)?.stands ?? worlds) < yourCallBelowShare * worlds;
  const yourCall = new Set(ids.filter(isCall));
  const sure = ids.filter((id) => !yourCall.has(id));
  const advised =
    yourCall.size === 0
      ? found
      : yield* inWorlds(
          given,
          sure,
          sure.map(() => null),
          false,
          0.7,
          1,
        );
  const plan = advised.map(({ planFigs }) => planFigs);
  const nothing = found.map(({ nothingFigs }) => nothingFigs as number);
  const difference = plan.map((figs, w) => figs - (nothing[w] as number));
  const figs = {
    plan: rangeOf(plan),
    doNothing: rangeOf(nothing),
    difference: rangeOf(difference),
    betterIn: difference.filter((more) => more >= -rounding).length,
  };
  return { standsIn, yourCall, confidence: { worlds, yourCallBelowShare, figs } };
}

function* inWorlds(
  { task, worlds, candidates }: PlanInWorlds,
  taken: readonly string[],
  rivals: readonly (string | null)[],
  withNothing: boolean,
  from: number,
  to: number,
): JobSteps<WorldFindings[]> {
  const free = candidates.map(({ id }) => id);
  const whole = { ...task, at: 'world', free, taken, rivals, withNothing, every } as const;
  const tasks = Array.from({ length: worlds }, (_, world) => ({ ...whole, world }));
  const found: WorldFindings[] = [];
  for (const [w, one] of tasks.entries()) {
    const ahead = tasks.slice(w + 1, w + 1 + mostAhead);
    const share = (done: number): number => from + ((to - from) * done) / worlds;
    const doing = `Trying ${withNothing ? 'each cut' : 'what is advised'} in plausible trees and years, ${w + 1} of ${worlds}`;
    found.push(yield* fetchTask(one, ahead, { doing, from: share(w), to: share(w + 1) }));
  }
  return found;
}
