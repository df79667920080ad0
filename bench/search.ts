/** The search for what to keep: a bud flipped and all scored again, and whole searches, against the number of candidates. */

import { finishJob } from '../src/engine/job.ts';
import { planInputOf } from '../src/engine/planInput.ts';
import { candidatesOf } from '../src/plan/candidates.ts';
import { ruleContext } from '../src/plan/ruleContext.ts';
import { type KeepProblem, searchKeepSet } from '../src/plan/search.ts';
import { thinProblem } from '../src/plan/thin.ts';
import { untracedSeason } from '../src/plan/tracedSeason.ts';
import { traceUpTo } from '../src/plan/traceUpTo.ts';
import { workYear } from '../src/plan/windows.ts';
import { anneal } from './anneal.ts';
import { budFile } from './budFile.ts';

const [waves, flips] = [2, 2000];

/** Processor time, which others on the machine disturb less. */
function cpuMs(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function problemOf(budCount: number) {
  const input = planInputOf(budFile(budCount), {});
  const { season, stage } = workYear(input);
  const all = candidatesOf(ruleContext(input.tree, input.stance, input.values), stage);
  const candidates = all.filter(({ belowFork }) => belowFork === null);
  const traced = finishJob(traceUpTo(waves, untracedSeason(input, season, new Set(), []), input));
  const make = (): KeepProblem =>
    thinProblem({
      tree: input.tree,
      traced,
      values: input.values,
      candidates,
      pinned: [],
      settled: new Set(),
    });
  const [leaves, stages] = [traced.full.canopy.nodes.length, traced.stages.length];
  return { make, candidates: candidates.length, leaves, stages };
}

function flipped(problem: KeepProblem): void {
  for (let i = 0; i < flips; i++) {
    problem.flip((7 * i) % problem.count);
    problem.value();
  }
}

function searched(problem: KeepProblem): number {
  const steps = searchKeepSet(problem);
  while (!steps.next().done);
  return problem.value();
}

/** Ten times as many scores as the search, from other seeds. */
function annealed(make: () => KeepProblem): string {
  let asked = 0;
  const fresh = make();
  const found = searched({
    ...fresh,
    value: () => {
      asked++;
      return fresh.value();
    },
  });
  const rivals = [1, 2].map((seed) => anneal(make(), 10 * asked, seed));
  const told = rivals.map((value) => value.toFixed(3)).join(' and ');
  return `${fresh.count} candidates: the search finds a set worth **${found.toFixed(3)}** figs; annealing with ten times as many scores, from two seeds, ${told}.`;
}

function row(budCount: number, withSearch: boolean): string {
  const { make, candidates, leaves, stages } = problemOf(budCount);
  let problem = make();
  const makeMs = cpuMs(() => (problem = make()));
  flipped(problem);
  const flipUs = (1000 * cpuMs(() => flipped(problem))) / flips;
  let asked = 0;
  const fresh = make();
  const counted = {
    ...fresh,
    value: () => {
      asked++;
      return fresh.value();
    },
  };
  const searchMs = withSearch ? cpuMs(() => searched(counted)).toFixed(0) : '-';
  return `| ${candidates} | ${leaves} | ${stages} | ${makeMs.toFixed(0)} | ${flipUs.toFixed(0)} | ${withSearch ? asked : '-'} | ${searchMs} |`;
}

export function measureSearch(): string {
  return [
    '## The search for what to keep',
    '',
    `Trees at bud break, ${waves} waves at full leaf; processor time. A flip takes a bud away or puts it back, with the figs of all nodes scored again; goal 1 ms.`,
    '',
    '| candidates | nodes at full leaf | stages | table, ms | flip and score, us | scores of a search | search, ms |',
    '|---:|---:|---:|---:|---:|---:|---:|',
    row(20, true),
    row(60, true),
    row(200, false),
    '',
    annealed(problemOf(60).make),
    '',
  ].join('\n');
}
