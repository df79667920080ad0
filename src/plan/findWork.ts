/** What a tree needs before any light is traced: the rules' cuts, what the search may choose from, the tips. */
import { yearOf } from '../season/calendar.ts';
import { bareBases, type Candidate, candidatesOf } from './candidates.ts';
import { findFaults } from './faults.ts';
import type { PlanInput } from './input.ts';
import { ofCandidate, ofFault } from './proposal.ts';
import { ruleContext, standsInLeaf } from './ruleContext.ts';
import { proposeTips, type Tips } from './tips.ts';
import { workYear } from './windows.ts';

export type FoundWork = ReturnType<typeof findWork> extends Generator<unknown, infer Found> ? Found : never;

/** All that is settled before any light is traced. */
export function* findWork(input: PlanInput) {
  const year = workYear(input);
  const seasonYear = yearOf(year.season.budBreakOn);
  yield { done: 0, doing: 'Looking at the wood' };
  const faults = findFaults(input.tree, input.stance, input.values);
  yield { done: 0, doing: 'Looking at the wood' };
  const context = ruleContext(faults.after, input.stance, input.values);
  const candidates = candidatesOf(context, year.stage);
  const choice = sortCandidates(candidates);
  const tips: Tips =
    year.stage === 'rest' && !standsInLeaf(input.tree)
      ? proposeTips(context, seasonYear, input.bearsFirstCrop)
      : { cuts: [], remarks: [] };
  const below = choice.below.map((one) => ofCandidate(one, [{ rule: 'below the fork' }]));
  const settled = [...faults.cuts.map(ofFault), ...below];
  return { year, seasonYear, faults, choice, tips, settled, bareBases: bareBases(candidates) };
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
