import { describe, expect, it, vi } from 'vitest';
import type { Cut } from '../../../src/plan/cut.ts';
import { noSearch } from '../../../src/plan/searchRecord.ts';
import { createPlanWork } from '../../../src/ui/state/planWork.ts';
import { smallTree } from '../../editor/smallTree.ts';
import { score, standInEngine } from './standIn.ts';

const asked = { date: '2030-06-23', boldness: 'balanced', renewal: false } as const;

const cut = (id: string): Cut => ({
  id,
  kind: 'remove',
  target: id,
  atM: 0,
  place: {} as Cut['place'],
  reasons: [],
  when: { from: '2030-06-23', to: '2030-07-01' },
  gain: { figs: 0.7, fruitingWoodM: 0.1, lights: [] },
  ifKept: { figs: -0.7, fallBelow: [] },
  pass: null,
  standsIn: null,
  cautions: ['sap'],
});

const plan = {
  date: '2030-06-23',
  cuts: [cut('first'), cut('second')],
  search: noSearch,
  choice: [],
  steps: [],
  pinch: null,
  yourCall: [],
  confidence: null,
  score: { doNothing: score(11.2), plan: score(14.9), withYourCall: null },
  remarks: [],
};

const confidence = { worlds: 32, yourCallBelowShare: 0.75, figs: null };

const trial = (ripeFigs: number) => ({ score: score(ripeFigs), shoots: [], nodes: [] });

describe('the cut list', () => {
  it('begins with every cut ticked and scored', async () => {
    const { engine, plans, trials } = standInEngine();
    const work = createPlanWork(engine);
    work.make(smallTree, asked);
    expect(plans[0]?.options).toEqual({ date: '2030-06-23', boldness: 'balanced', firstList: true });
    await plans[0]?.answer(plan);
    expect([...work.store.getState().ticked]).toEqual(['first', 'second']);
    expect(trials[0]?.options).toEqual(['first', 'second']);
    await trials[0]?.answer(trial(14.9));
    expect(work.store.getState().trial?.score.ripeFigs).toBe(14.9);
  });

  it('shows the score of the ticks as they are now, whatever order the answers come in', async () => {
    const { engine, plans, trials } = standInEngine();
    const work = createPlanWork(engine);
    work.make(smallTree, asked);
    await plans[0]?.answer(plan);
    work.tick(['second'], false);
    work.tick(['first'], false);
    expect(trials.map((asked) => asked.options)).toEqual([['first', 'second'], ['first'], []]);
    await trials[2]?.answer(trial(11.2));
    await trials[1]?.answer(trial(13.1));
    expect(work.store.getState()).toMatchObject({ isTrying: false, trial: { score: { ripeFigs: 11.2 } } });
  });

  it('drops the list of a tree that was planned before', async () => {
    const { engine, plans } = standInEngine();
    const work = createPlanWork(engine);
    work.make(smallTree, asked);
    work.make({ ...smallTree, name: 'Changed fig' }, asked);
    expect(plans[0]?.isCancelled()).toBe(true);
    await plans[0]?.answer(plan);
    expect(work.store.getState().plan).toBeNull();
    await plans[1]?.answer(plan);
    expect(work.store.getState().file?.name).toBe('Changed fig');
  });

  it('leaves unticked what was unticked on the list before, but not on that of another tree', async () => {
    const { engine, plans, replans } = standInEngine();
    const work = createPlanWork(engine);
    work.make(smallTree, asked);
    await plans[0]?.answer(plan);
    work.tick(['second'], false);
    work.make({ ...smallTree, name: 'Changed fig' }, { ...asked, renewal: true });
    expect(replans[0]?.options).toEqual({
      date: '2030-06-23',
      boldness: 'balanced',
      firstList: true,
      renewal: true,
    });
    const longer = { ...plan, cuts: [...plan.cuts, cut('third')] };
    await replans[0]?.answer({ plan: longer, isApproximate: false });
    expect([...work.store.getState().ticked]).toEqual(['first', 'third']);
    work.make({ ...smallTree, id: 'another' }, asked);
    await plans[1]?.answer(plan);
    expect([...work.store.getState().ticked]).toEqual(['first', 'second']);
  });

  it('leaves what is the grower’s call unticked, and ticked on the next list what was ticked on this one', async () => {
    const { engine, plans, replans, trials } = standInEngine();
    const work = createPlanWork(engine);
    work.make(smallTree, asked);
    await plans[0]?.answer({ ...plan, yourCall: [cut('this'), cut('that')] });
    expect([...work.store.getState().ticked]).toEqual(['first', 'second']);
    work.tick(['that'], true);
    expect(trials.at(-1)?.options).toEqual(['first', 'second', 'that']);
    work.make({ ...smallTree, name: 'Changed fig' }, asked);
    const next = { ...plan, cuts: [cut('first')], yourCall: [cut('that'), cut('this')], confidence };
    await replans[0]?.answer({ plan: next, isApproximate: false });
    expect([...work.store.getState().ticked]).toEqual(['first', 'that']);
    expect(work.store.getState().isApproximate).toBe(false);
  });

  it('ticks what the grower marks to go, though it stood unticked', async () => {
    const { engine, plans, replans } = standInEngine();
    const work = createPlanWork(engine);
    work.make(smallTree, asked);
    await plans[0]?.answer(plan);
    work.tick(['second'], false);
    work.make({ ...smallTree, name: 'Changed fig' }, asked);
    const marked = { ...cut('second'), reasons: [{ rule: 'pinned' } as const] };
    await replans[0]?.answer({ plan: { ...plan, cuts: [cut('first'), marked] }, isApproximate: false });
    expect([...work.store.getState().ticked]).toEqual(['first', 'second']);
  });

  it('shows a first answer to a mark at once, and the regrown one when the hand rests', async () => {
    vi.useFakeTimers();
    const { engine, plans, replans } = standInEngine();
    const work = createPlanWork(engine);
    work.make(smallTree, asked);
    await plans[0]?.answer(plan);
    work.make({ ...smallTree, note: 'one mark' }, asked);
    await replans[0]?.answer({ plan, isApproximate: true });
    expect(work.store.getState()).toMatchObject({ isApproximate: true, progress: null });
    vi.advanceTimersByTime(500);
    work.make({ ...smallTree, note: 'two marks' }, asked);
    vi.advanceTimersByTime(5000);
    expect(plans).toHaveLength(1);
    await replans[1]?.answer({ plan, isApproximate: true });
    vi.advanceTimersByTime(5000);
    expect(plans).toHaveLength(2);
    plans[1]?.onProgress({ done: 0.3, doing: 'Tracing' });
    expect(work.store.getState()).toMatchObject({ progress: { done: 0.3 }, file: { note: 'two marks' } });
    await plans[1]?.answer({ ...plan, cuts: [cut('other')] });
    const state = work.store.getState();
    expect(state).toMatchObject({ isApproximate: false, progress: null });
    expect(state.plan?.cuts.map(({ id }) => id)).toEqual(['other']);
    vi.useRealTimers();
  });

  it('shows a first list as soon as there is one, ticked and scored, and moves calls apart when they are known', async () => {
    const { engine, plans, trials } = standInEngine();
    const work = createPlanWork(engine);
    work.make(smallTree, asked);
    plans[0]?.onProgress({ done: 0.5, doing: 'Trying', partial: plan as never });
    expect(work.store.getState()).toMatchObject({ isFirst: true, progress: { done: 0.5 }, file: smallTree });
    expect(trials[0]?.options).toEqual(['first', 'second']);
    work.tick(['first'], false);
    plans[0]?.onProgress({ done: 0.6, doing: 'Trying' });
    expect([...work.store.getState().ticked]).toEqual(['second']);
    const third = { ...plan, cuts: [cut('first'), cut('third')], yourCall: [cut('second')], confidence };
    await plans[0]?.answer(third);
    expect(work.store.getState()).toMatchObject({ isFirst: false, progress: null });
    // Unticked by hand; ticked by default on the first list, and a call since.
    expect([...work.store.getState().ticked]).toEqual(['third']);
  });

  it('keeps the first list where the rest is stopped', () => {
    const { engine, plans } = standInEngine();
    const work = createPlanWork(engine);
    work.make(smallTree, asked);
    plans[0]?.onProgress({ done: 0.5, doing: 'Trying', partial: plan as never });
    work.cancel();
    const { plan: shown, isFirst, progress, stopped } = work.store.getState();
    expect(shown?.cuts.map(({ id }) => id)).toEqual(['first', 'second']);
    expect({ isFirst, progress, stopped }).toEqual({
      isFirst: true,
      progress: null,
      stopped: { why: 'cancelled' },
    });
  });

  it('can be stopped, and says so', () => {
    const { engine } = standInEngine();
    const work = createPlanWork(engine);
    work.make(smallTree, asked);
    work.cancel();
    expect(work.store.getState()).toMatchObject({ progress: null, stopped: { why: 'cancelled' } });
  });
});
