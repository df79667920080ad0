/** Trying a plan in worlds: what it adds to a plan, and what one world takes. */
import { finishJob } from '../src/engine/job.ts';
import { planInputOf } from '../src/engine/planInput.ts';
import { planJob } from '../src/plan/planJob.ts';
import { budFile } from './budFile.ts';

const worlds = 32;

/** Processor time, which others on the machine disturb less. */
function cpuMs(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function row(budCount: number): string {
  const file = budFile(budCount);
  const plan = (count: number) => finishJob(planJob(planInputOf(file, { worlds: count }))).plan;
  plan(2);
  const withoutMs = cpuMs(() => plan(0));
  let made = plan(0);
  const withMs = cpuMs(() => {
    made = plan(worlds);
  });
  const extraMs = withMs - withoutMs;
  const all = [...made.cuts, ...made.yourCall];
  const stands = all.flatMap(({ standsIn }) => (standsIn === null ? [] : [standsIn.stands]));
  const [cuts, calls] = [made.cuts.length, made.yourCall.length];
  return `| ${budCount} | ${cuts} + ${calls} | ${Math.min(...stands)} to ${Math.max(...stands)} | ${withoutMs.toFixed(0)} | ${extraMs.toFixed(0)} | ${(extraMs / worlds).toFixed(0)} | ${(extraMs / withoutMs).toFixed(2)} |`;
}

export function measureWorlds(): string {
  return [
    '## A plan in worlds',
    '',
    `Trees at bud break in pots, three stages, ${worlds} worlds, on one thread; processor time. Worlds go to all threads there are, one each.`,
    '',
    '| buds | cuts + your call | stand in, of 32 | plan without worlds, ms | worlds, ms | one world, ms | worlds of the rest |',
    '|---:|---:|---:|---:|---:|---:|---:|',
    row(20),
    row(60),
    '',
  ].join('\n');
}
