import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createLightWork } from '../../../src/ui/state/lightWork.ts';
import { monthPeriod } from '../../../src/ui/state/monthPeriod.ts';
import { smallTree } from '../../editor/smallTree.ts';
import { lightAnswer, standInEngine } from './standIn.ts';

const other = { ...smallTree, name: 'Changed fig' };

describe('the light of the open tree', () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  it('says which tree its figures are of', async () => {
    const { engine, lights } = standInEngine();
    const work = createLightWork(engine);
    work.trace(smallTree);
    vi.advanceTimersByTime(1);
    await lights[0]?.answer(lightAnswer(7));
    expect(work.store.getState()).toMatchObject({ file: smallTree, progress: null });
    work.trace(other, 300);
    expect(work.store.getState().file).toBe(smallTree);
    expect(work.store.getState().progress).not.toBeNull();
  });

  it('traces the latest of a row of edits, once in a while', () => {
    const { engine, lights } = standInEngine();
    const work = createLightWork(engine);
    for (const name of ['a', 'ab', 'abc', 'abcd', 'abcde']) {
      work.trace({ ...smallTree, name }, 50);
      vi.advanceTimersByTime(9);
    }
    expect(lights).toHaveLength(0);
    vi.advanceTimersByTime(50);
    expect(lights).toHaveLength(1);
    lights[0]?.onProgress({ done: 0.1, doing: 'Tracing', partial: lightAnswer(3) as never });
    expect(work.store.getState().file?.name).toBe('abcde');
  });

  it('leaves another tree at once, and never shows its answer', async () => {
    const { engine, lights } = standInEngine();
    const work = createLightWork(engine);
    work.trace({ ...smallTree, id: 'another' });
    vi.advanceTimersByTime(1);
    work.trace(smallTree);
    vi.advanceTimersByTime(1);
    expect(lights[0]?.isCancelled()).toBe(true);
    await lights[0]?.answer(lightAnswer(1));
    expect(work.store.getState().answer).toBeNull();
    await lights[1]?.answer(lightAnswer(2));
    expect(work.store.getState().answer?.report.seed).toBe(2);
    expect(work.store.getState().file).toBe(smallTree);
  });

  it('follows a branch that is pulled: each trace gives its first picture, then the latest tree is next', async () => {
    const { engine, lights } = standInEngine();
    const work = createLightWork(engine);
    const pulled = (name: string) => {
      work.trace({ ...smallTree, name });
      vi.advanceTimersByTime(1);
    };
    pulled('a little');
    pulled('on');
    pulled('far');
    expect(lights).toHaveLength(1);
    lights[0]?.onProgress({ done: 0.1, doing: 'Tracing', partial: lightAnswer(11) as never });
    expect(work.store.getState().file?.name).toBe('a little');
    expect(work.store.getState().answer?.report.seed).toBe(11);
    expect(lights[0]?.isCancelled()).toBe(true);
    expect(lights).toHaveLength(2);
    await lights[1]?.answer(lightAnswer(12));
    expect(work.store.getState()).toMatchObject({ file: { name: 'far' }, progress: null });
    expect(lights).toHaveLength(2);
  });

  it('goes on to the latest tree when the one before it fails', async () => {
    const { engine, lights } = standInEngine();
    const work = createLightWork(engine);
    work.trace(smallTree);
    vi.advanceTimersByTime(1);
    work.trace(other);
    vi.advanceTimersByTime(1);
    await lights[0]?.fail('no more memory');
    expect(lights).toHaveLength(2);
    await lights[1]?.answer(lightAnswer(5));
    expect(work.store.getState()).toMatchObject({ file: other, stopped: null, progress: null });
  });

  it('shows coarse figures while finer ones are traced', () => {
    const { engine, lights } = standInEngine();
    const work = createLightWork(engine);
    work.trace(smallTree);
    vi.advanceTimersByTime(1);
    lights[0]?.onProgress({ done: 0.25, doing: 'Tracing', partial: lightAnswer(3) as never });
    expect(work.store.getState()).toMatchObject({ file: smallTree, progress: { done: 0.25 } });
    expect(work.store.getState().answer?.report.seed).toBe(3);
  });

  it('keeps the old figures when it is stopped, and says that it was', async () => {
    const { engine, lights } = standInEngine();
    const work = createLightWork(engine);
    work.trace(smallTree);
    vi.advanceTimersByTime(1);
    await lights[0]?.answer(lightAnswer(7));
    work.trace(other);
    vi.advanceTimersByTime(1);
    work.cancel();
    expect(work.store.getState()).toMatchObject({
      file: smallTree,
      progress: null,
      stopped: { why: 'cancelled' },
    });
  });

  it('passes on what went wrong', async () => {
    const { engine, lights } = standInEngine();
    const work = createLightWork(engine);
    work.trace(smallTree);
    vi.advanceTimersByTime(1);
    await lights[0]?.fail('no more memory');
    expect(work.store.getState().stopped).toEqual({ why: 'failed', message: 'no more memory' });
  });
});

describe('a month of a season', () => {
  it('is found in the year it falls in, also over New Year', () => {
    const southern = { from: '2029-10-12', to: '2030-04-03' };
    expect(monthPeriod(southern, 12)).toEqual({ from: '2029-12-01', to: '2029-12-31' });
    expect(monthPeriod(southern, 2)).toEqual({ from: '2030-02-01', to: '2030-02-28' });
    expect(monthPeriod(southern, 7)).toBeNull();
  });
});
