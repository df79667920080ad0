import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { TreeFile } from '../../../src/document/treeFile.ts';
import { createEditor } from '../../../src/editor/editor.ts';
import { followShownTree } from '../../../src/ui/state/followShownTree.ts';
import { createLightWork } from '../../../src/ui/state/lightWork.ts';
import { smallTree } from '../../editor/smallTree.ts';
import { lightAnswer, standInEngine } from './standIn.ts';

const pulled = (name: string): TreeFile => ({ ...smallTree, name });

function bench() {
  const { engine, lights } = standInEngine();
  const editor = createEditor(smallTree);
  const view = createStore<{ draft: TreeFile | null }>(() => ({ draft: null }));
  const light = createLightWork(engine);
  followShownTree(editor, view, light);
  return { editor, view, light, lights };
}

describe('the light of the tree that is drawn', () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  const begin = async () => {
    const all = bench();
    vi.advanceTimersByTime(1);
    await all.lights[0]?.answer(lightAnswer(1));
    return all;
  };

  it('follows a limb while it is pulled, the newest shape first', async () => {
    const { view, light, lights } = await begin();
    for (const name of ['a little', 'on', 'far']) {
      view.setState({ draft: pulled(name) });
      vi.advanceTimersByTime(11);
    }
    // Of the tree before, and so not of the one that is drawn.
    expect(light.store.getState().file).toBe(smallTree);
    vi.advanceTimersByTime(40);
    expect(lights).toHaveLength(2);
    lights[1]?.onProgress({ done: 0.1, doing: 'Tracing', partial: lightAnswer(2) as never });
    expect(light.store.getState().file?.name).toBe('far');
  });

  it('lets the trace of an older shape go once its first picture is there', async () => {
    const { view, lights } = await begin();
    view.setState({ draft: pulled('a little') });
    vi.advanceTimersByTime(50);
    view.setState({ draft: pulled('far') });
    vi.advanceTimersByTime(50);
    expect(lights[1]?.isCancelled()).toBe(false);
    lights[1]?.onProgress({ done: 0.1, doing: 'Tracing', partial: lightAnswer(2) as never });
    expect(lights[1]?.isCancelled()).toBe(true);
    expect(lights).toHaveLength(3);
  });

  it('is of the open tree again once the hand lets go, whether the shape is taken or not', async () => {
    const { editor, view, light, lights } = await begin();
    view.setState({ draft: pulled('far') });
    vi.advanceTimersByTime(50);
    await lights[1]?.answer(lightAnswer(2));
    view.setState({ draft: null });
    vi.advanceTimersByTime(50);
    await lights[2]?.answer(lightAnswer(3));
    expect(light.store.getState().file).toBe(smallTree);
    view.setState({ draft: pulled('far') });
    editor.make((file) => ({ ok: true, file: { ...file, name: 'taken' }, said: 'Pulled' }));
    view.setState({ draft: null });
    vi.advanceTimersByTime(50);
    expect(lights).toHaveLength(4);
    await lights[3]?.answer(lightAnswer(4));
    expect(light.store.getState().file?.name).toBe('taken');
  });

  it('is not traced anew for what changes no tree', async () => {
    const { editor, view, lights } = await begin();
    editor.select('trunk');
    view.setState({ draft: null });
    vi.advanceTimersByTime(500);
    expect(lights).toHaveLength(1);
  });
});
