import { describe, expect, it } from 'vitest';
import type { DayAnswer, SkyAnswer } from '../../../src/engine/look.ts';
import { createLookWork } from '../../../src/ui/state/lookWork.ts';
import { smallTree } from '../../editor/smallTree.ts';
import { standInEngine } from './standIn.ts';

const day = (date: string) => ({ report: { date } }) as unknown as DayAnswer;
const sky = (node: number) => ({ node }) as unknown as SkyAnswer;
const other = { ...smallTree, name: 'Changed fig' };

describe('the day that is looked at', () => {
  it('is asked for once, however often it is shown', async () => {
    const { engine, looks } = standInEngine();
    const work = createLookWork(engine);
    work.showDay(smallTree, '2030-07-03');
    work.showDay(smallTree, '2030-07-03');
    await looks[0]?.answer(day('2030-07-03'));
    work.showDay(smallTree, '2030-07-03');
    expect(looks).toHaveLength(1);
    expect(work.day.getState()).toMatchObject({
      file: smallTree,
      of: '2030-07-03',
      answer: day('2030-07-03'),
      progress: null,
    });
  });

  it('stays on the page, and known as old, until that of the changed tree is there', async () => {
    const { engine, looks } = standInEngine();
    const work = createLookWork(engine);
    work.showDay(smallTree, '2030-07-03');
    await looks[0]?.answer(day('2030-07-03'));
    work.showDay(other, '2030-07-03');
    expect(work.day.getState().file).toBe(smallTree);
    expect(work.day.getState().answer).not.toBeNull();
    await looks[1]?.answer(day('2030-07-03'));
    expect(work.day.getState().file).toBe(other);
  });

  it('is that of the newest question, and the one before is stopped', async () => {
    const { engine, looks } = standInEngine();
    const work = createLookWork(engine);
    work.showDay(smallTree, '2030-07-03');
    work.showDay(smallTree, '2030-07-04');
    expect(looks[0]?.isCancelled()).toBe(true);
    await looks[1]?.answer(day('2030-07-04'));
    expect(work.day.getState().of).toBe('2030-07-04');
    expect(work.day.getState().failed).toBeNull();
  });

  it('says how far it is, and what went wrong; then it can be asked for again', async () => {
    const { engine, looks } = standInEngine();
    const work = createLookWork(engine);
    work.showDay(smallTree, '2030-07-03');
    looks[0]?.onProgress({ done: 0.4, doing: 'Following the sun' });
    expect(work.day.getState().progress?.done).toBe(0.4);
    await looks[0]?.fail('lookJob: no such day');
    expect(work.day.getState()).toMatchObject({ failed: 'lookJob: no such day', progress: null });
    work.showDay(smallTree, '2030-07-03');
    expect(looks).toHaveLength(2);
    expect(work.day.getState().failed).toBeNull();
  });
});

describe('the sky that is looked at', () => {
  it('is of a shoot and a node, and does not stop the day', async () => {
    const { engine, looks } = standInEngine();
    const work = createLookWork(engine);
    work.showDay(smallTree, '2030-07-03');
    work.showSky(smallTree, { shootId: 'east-shoot', node: 3 });
    expect(looks[0]?.isCancelled()).toBe(false);
    expect(looks[1]?.options).toMatchObject({ ask: 'sky', shootId: 'east-shoot', node: 3 });
    await looks[1]?.answer(sky(3));
    work.showSky(smallTree, { shootId: 'east-shoot', node: 4 });
    expect(work.sky.getState()).toMatchObject({ of: 'east-shoot 3', answer: sky(3) });
    expect(looks).toHaveLength(3);
  });
});
