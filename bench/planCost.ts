/** What a plan costs: processor time by what it is doing, and against candidates and leaves; another pin, and one cut ticked. */
import { readFileSync } from 'node:fs';
import { parseTreeFile } from '../src/document/parseTreeFile.ts';
import type { TreeFile } from '../src/document/treeFile.ts';
import { finishJob } from '../src/engine/job.ts';
import { planInputOf } from '../src/engine/planInput.ts';
import type { PlanInput } from '../src/plan/input.ts';
import { type PlanResult, planJob } from '../src/plan/planJob.ts';
import { replanJob } from '../src/plan/replan.ts';
import { tryCuts } from '../src/plan/trial.ts';
import { budFile } from './budFile.ts';
import { figFile, sampleFile } from './figFile.ts';

/** Processor time, which others on the machine disturb less, milliseconds. */
function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

interface Costed {
  readonly result: PlanResult;
  readonly wholeMs: number;
  /** By the words of the progress. */
  readonly byDoing: ReadonlyMap<string, number>;
}

/** On one thread. */
function costed(input: PlanInput): Costed {
  const byDoing = new Map<string, number>();
  const job = planJob(input);
  const begunMs = cpuMs();
  let [before, doing] = [begunMs, 'Looking at the wood'];
  for (;;) {
    const step = job.next();
    const now = cpuMs();
    byDoing.set(doing, (byDoing.get(doing) ?? 0) + now - before);
    if (step.done) return { result: step.value, wholeMs: now - begunMs, byDoing };
    [before, doing] = [now, step.value.doing.replace(/ on \d+ .*/, '')];
  }
}

const sample = (name: string): TreeFile => {
  const read = parseTreeFile(readFileSync(`public/examples/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error(`planCost: ${read.reason}`);
  return read.file;
};

const doings = [
  'Looking at the wood',
  'Following the light',
  'Trying which shoots to keep',
  'Looking at fewer and more shoots',
  'Trying the plan',
  'Weighing each cut',
];

const whole = (ms: number): string => ms.toFixed(0);

function phaseRow(name: string, file: TreeFile): string {
  const { byDoing, wholeMs } = costed(planInputOf(file, {}));
  const parts = doings.map((doing) => whole(byDoing.get(doing) ?? 0));
  return `| ${name} | ${parts.join(' | ')} | ${whole(wholeMs)} |`;
}

/** Another bud or shoot pinned to be kept: the first that the plan takes. */
function pinned(input: PlanInput, { plan }: PlanResult): PlanInput {
  const target = plan.cuts.find(({ kind }) => kind === 'rub off bud' || kind === 'remove')?.target;
  const pin = <Any extends { readonly id: string }>(one: Any): Any =>
    one.id === target ? { ...one, pin: 'keep' } : one;
  const axes = input.tree.axes.map((axis) => ({ ...pin(axis), buds: axis.buds.map(pin) }));
  return { ...input, tree: { axes } };
}

const ticks = 40;

function scaleRow(name: string, file: TreeFile): string {
  const input = planInputOf(file, { worlds: 0 });
  const { result, wholeMs } = costed(input);
  const { plan, trial, made } = result;
  const leaves = trial.traced.full.canopy.leaves.length;
  const again = pinned(input, result);
  finishJob(replanJob(made, again));
  let before = cpuMs();
  finishJob(replanJob(made, again));
  const pinMs = cpuMs() - before;
  const ids = plan.cuts.map(({ id }) => id);
  before = cpuMs();
  for (let i = 0; i < ticks; i++) tryCuts(trial, ids.toSpliced(i % ids.length, 1));
  const tickMs = (cpuMs() - before) / ticks;
  const { candidates } = plan.search;
  return `| ${name} | ${candidates} | ${leaves} | ${trial.traced.stages.length} | ${whole(wholeMs)} | ${whole(pinMs)} | ${tickMs.toFixed(1)} |`;
}

export function measurePlanCost(): string {
  costed(planInputOf(budFile(20), { worlds: 1 }));
  const text = sampleFile('.');
  return [
    '## What a plan costs',
    '',
    'Processor time on one thread, ms, by what the plan says that it is doing; 32 worlds. Regrowing and tables count with what follows them.',
    '',
    `| tree | ${doings.join(' | ')} | all |`,
    `|---|${'---:|'.repeat(doings.length + 1)}`,
    phaseRow('potted sample at bud break', sample('potted-fig-bud-break')),
    phaseRow('potted sample in leaf', sample('potted-fig-in-leaf')),
    phaseRow('old fig in the ground', sample('old-fig-in-ground')),
    phaseRow('60 buds', budFile(60)),
    '',
    'Against candidates and leaves, without worlds. Another pin: answered from the rays of the plan made. A tick: one cut left out, all told anew.',
    '',
    '| tree | candidates | leaves | stages | plan, ms | another pin, ms | a tick, ms |',
    '|---|---:|---:|---:|---:|---:|---:|',
    scaleRow('20 buds', budFile(20)),
    scaleRow('60 buds', budFile(60)),
    scaleRow('200 buds', budFile(200)),
    scaleRow('25 shoots in leaf', figFile(text, 25)),
    scaleRow('83 shoots in leaf', figFile(text, 83)),
    scaleRow('417 shoots in leaf', figFile(text, 417)),
    '',
  ].join('\n');
}
