import { describe, expect, it } from 'vitest';
import { runJob } from '../../src/engine/runJob.ts';
import { serveTracer } from '../../src/engine/serveTracer.ts';
import type { TracerPort } from '../../src/engine/tracerMessages.ts';
import { createTracerPool, type TracerThread } from '../../src/engine/tracerPool.ts';
import { planJob } from '../../src/plan/planJob.ts';
import { bud, limb, planInput, tree, trunk } from '../plan/smallTree.ts';

/** A thread's two ports on the thread at hand; what passes is copied as it would be between threads. */
function standIn(told: unknown[]): TracerThread {
  const inner: TracerPort = { onmessage: null, postMessage: (message) => pass(outer, message) };
  const outer: TracerPort = {
    onmessage: null,
    postMessage: (message) => {
      told.push(message);
      pass(inner, message);
    },
  };
  serveTracer(inner);
  return { port: outer, onBreakdown: null, stop: () => {} };
}

function pass(to: TracerPort, message: unknown): void {
  const data: unknown = structuredClone(message);
  setTimeout(() => to.onmessage?.({ data }), 0);
}

const budsOn = (id: string) => [0.31, 0.47, 0.62, 0.8].map((atM, i) => bud(`${id}${i}`, atM, 131 * i));
const input = planInput(
  tree(trunk(), limb('east', 93, { buds: budsOn('e') }), limb('west', 248, { buds: budsOn('w') })),
  { worlds: 5, potVolumeL: 23 },
);

describe('a plan tried in worlds', { timeout: 60_000 }, () => {
  it.each([1, 3])('is the same with %i threads as with none, and the worlds go to them', async (count) => {
    const told: unknown[] = [];
    const tracers = createTracerPool(() => standIn(told), count);
    const shared = await runJob(planJob(input), undefined, tracers).result;
    tracers.dispose();
    const alone = await runJob(planJob(input)).result;
    expect(alone.plan.confidence?.worlds).toBe(5);
    expect([...alone.plan.cuts, ...alone.plan.yourCall].length).toBeGreaterThan(0);
    expect(shared.plan).toEqual(alone.plan);
    const worlds = told.flatMap((message) => {
      const { what } = message as { what?: { at?: string; world?: number } };
      return what?.at === 'world' ? [what.world] : [];
    });
    expect(new Set(worlds)).toEqual(new Set([0, 1, 2, 3, 4]));
  });
});
