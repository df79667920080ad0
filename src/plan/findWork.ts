/** What a tree needs before any light is traced: the rules' cuts, what the search may choose from, the tips. */
import { yearOf } from '../season/calendar.ts';
import { applyCuts } from './applyCuts.ts';
import { bareBases, type Candidate, candidatesOf } from './candidates.ts';
import { findFaults } from './faults.ts';
import type { PlanInput } from './input.ts';
import { ofCandidate, ofFault, type Proposal } from './proposal.ts';
import { ruleContext, standsInLeaf } from './ruleContext.ts';
import { proposeTips, type Tips } from './tips.ts';
import { type WorkYear, workYear } from './windows.ts';

export type FoundWork = ReturnType<typeof findWork> extends Generator<unknown, infer Found> ? Found : never;

interface WorkOptions {
  /** Known already. */
  readonly year?: WorkYear;
  /** Ids of cuts that are told, but not made: the grower's call. */
  readonly leave?: ReadonlySet<string>;
}

/** All that is settled before any light is traced. */
export function* findWork(input: PlanInput, { year = workYear(input), leave = new Set() }: WorkOptions = {}) {
  const seasonYear = yearOf(year.season.budBreakOn);
  yield { done: 0, doing: 'Looking at the wood' };
  const faults = findFaults(input.tree, input.stance, input.values);
  yield { done: 0, doing: 'Looking at the wood' };
  const stays = ({ id }: Proposal): boolean => leave.has(id);
  const ruled = faults.cuts.map(ofFault);
  const made = ruled.filter((one) => !stays(one));
  const after = made.length === ruled.length ? faults.after : applyCuts(input.tree, made);
  const context = ruleContext(after, input.stance, input.values);
  const candidates = candidatesOf(context, year.stage);
  const choice = sortCandidates(candidates, leave);
  const tips: Tips =
    year.stage === 'rest' && !standsInLeaf(input.tree)
      ? proposeTips(context, seasonYear, input.bearsFirstCrop)
      : { cuts: [], remarks: [] };
  const headed = tips.cuts.map(ofFault);
  const below = choice.below.map(belowTheFork);
  return {
    year,
    seasonYear,
    faults,
    choice,
    tipRemarks: tips.remarks,
    /** Made whatever the search finds: the rules' cuts, and in rest the tips. */
    settled: [...made, ...below.filter((one) => !stays(one))],
    tips: headed.filter((one) => !stays(one)),
    /** Found, but left to the grower. */
    yourCall: [...ruled, ...below, ...headed].filter(stays),
    bareBases: bareBases(candidates),
  };
}

const belowTheFork = (one: Candidate): Proposal =>
  ofCandidate(one, one.belowFork === null ? [] : [{ rule: 'below the fork', ...one.belowFork }]);

interface Choice {
  readonly free: readonly Candidate[];
  /** To be kept by the grower's word, or left to them. */
  readonly pinned: readonly Candidate[];
  readonly below: readonly Candidate[];
}

function sortCandidates(candidates: readonly Candidate[], leave: ReadonlySet<string>): Choice {
  const stays = (one: Candidate): boolean =>
    one.pinnedKeep || (one.belowFork !== null && leave.has(belowTheFork(one).id));
  return {
    pinned: candidates.filter(stays),
    below: candidates.filter((one) => !one.pinnedKeep && one.belowFork !== null),
    free: candidates.filter((one) => !one.pinnedKeep && one.belowFork === null),
  };
}
