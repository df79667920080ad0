import { describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { TreeFile } from '../../../../src/document/treeFile.ts';
import { writeTreeFile } from '../../../../src/document/writeTreeFile.ts';
import { seenAt } from '../../../../src/editor/drawing/look.ts';
import { createEditor } from '../../../../src/editor/editor.ts';
import { random01 } from '../../../../src/geometry/random.ts';
import {
  type Effect,
  type HandEvent,
  handStep,
  idleHand,
  isDrawing,
} from '../../../../src/ui/scene/draw/gesture.ts';
import { createDrawWork } from '../../../../src/ui/state/drawWork.ts';
import { flatLook, south } from '../../../editor/drawing/looks.ts';
import { smallTree } from '../../../editor/smallTree.ts';

const seed = 20270423;

type Down = Extract<HandEvent, { type: 'down' }>;
const down = (pointerId: number, x: number, y: number, more: Partial<Down> = {}): HandEvent => ({
  type: 'down',
  pointerId,
  x,
  y,
  pointerType: 'touch',
  button: 0,
  isOn: true,
  ...more,
});
const move = (pointerId: number, x: number, y: number): HandEvent => ({ type: 'move', pointerId, x, y });
const lift = (pointerId: number, x: number, y: number): HandEvent => ({ type: 'up', pointerId, x, y });

/** All effects of some events, and whether the camera heard of each. */
function run(events: readonly HandEvent[], hand: 'look' | 'draw' = 'draw') {
  let state = idleHand;
  const effects: Effect[] = [];
  const heard: boolean[] = [];
  for (const event of events) {
    const step = handStep(state, event, hand);
    state = step.state;
    effects.push(...step.effects);
    heard.push(!step.isTaken);
  }
  return { effects, heard, state, did: effects.map((effect) => effect.do).join(' ') };
}

describe('the hand on the stage', () => {
  it('draws with one finger from wood, from where it came down, and keeps it when it is lifted', () => {
    const { effects, heard, state } = run([
      down(1, 50, 60),
      move(1, 55, 60),
      move(1, 90, 70),
      lift(1, 95, 80),
    ]);
    expect(effects).toEqual([
      { do: 'begin', x: 50, y: 60 },
      { do: 'draw', x: 90, y: 70 },
      { do: 'draw', x: 95, y: 80 },
      { do: 'keep' },
    ]);
    expect(heard).toEqual([false, false, false, false]);
    expect(state.presses).toEqual([]);
  });

  it('only turns the picture where it looks, and beside all wood', () => {
    const swipe = [down(1, 50, 60), move(1, 90, 70), lift(1, 95, 80)];
    expect(run(swipe, 'look')).toMatchObject({ did: '', heard: [true, true, true] });
    const beside = [down(1, 50, 60, { isOn: false }), move(1, 90, 70), lift(1, 95, 80)];
    expect(run(beside)).toMatchObject({ did: '', heard: [true, true, true] });
  });

  it('selects by a tap, whatever the hand does', () => {
    for (const hand of ['look', 'draw'] as const) {
      expect(run([down(4, 50, 60), move(4, 53, 61), lift(4, 53, 61)], hand).effects).toEqual([
        { do: 'tap', x: 53, y: 61, pointerType: 'touch' },
      ]);
    }
  });

  it('drops the stroke when a second finger comes, and tells the camera of both', () => {
    const pinch = [
      down(1, 50, 60),
      move(1, 90, 70),
      down(2, 200, 210),
      move(1, 80, 60),
      move(2, 220, 230),
      lift(2, 220, 230),
      move(1, 20, 20),
      lift(1, 20, 20),
    ];
    const { effects, heard } = run(pinch);
    expect(effects).toEqual([
      { do: 'begin', x: 50, y: 60 },
      { do: 'draw', x: 90, y: 70 },
      { do: 'drop' },
      { do: 'navigate', pointerId: 1, x: 90, y: 70 },
    ]);
    expect(heard.slice(2)).toEqual([true, true, true, true, true, true]);
  });

  it('draws with the pen alone once there was one, and the palm beside it does nothing', () => {
    const pen = { pointerType: 'pen' } as const;
    const { did, heard } = run([
      down(1, 50, 60, pen),
      move(1, 90, 70),
      down(2, 300, 400),
      move(2, 340, 430),
      lift(1, 99, 80),
      lift(2, 340, 430),
      down(3, 50, 60),
      move(3, 90, 70),
      lift(3, 90, 70),
    ]);
    expect(did).toBe('begin draw draw keep');
    expect(heard).toEqual([false, false, false, false, false, false, true, true, true]);
  });

  it('takes the picture from a palm that lay there before the pen', () => {
    const { did, heard } = run([
      down(2, 300, 400, { isOn: false }),
      move(2, 320, 400),
      down(1, 50, 60, { pointerType: 'pen' }),
      move(2, 340, 430),
      move(1, 90, 70),
      lift(1, 90, 70),
    ]);
    expect(did).toBe('begin draw draw keep');
    expect(heard).toEqual([true, true, false, false, false, false]);
  });

  it('leaves no trace when the system takes the pointer, or on Escape', () => {
    expect(run([down(1, 5, 6), move(1, 90, 70), { type: 'cancel', pointerId: 1 }]).did).toBe(
      'begin draw drop',
    );
    const escaped = run([down(1, 5, 6), move(1, 90, 70), { type: 'stop' }, move(1, 99, 70), lift(1, 99, 70)]);
    expect(escaped.did).toBe('begin draw drop');
    expect(escaped.heard.slice(3)).toEqual([false, false]);
  });

  it('leaves the other buttons of a mouse to the camera', () => {
    const right = down(1, 50, 60, { pointerType: 'mouse', button: 2 });
    expect(run([right, move(1, 90, 70), lift(1, 90, 70)])).toMatchObject({
      did: '',
      heard: [true, true, true],
    });
  });
});

/** A hand over the small tree: what the machine says is done to the document. */
function bench() {
  const editor = createEditor(smallTree);
  const view = createStore<{ readonly draft: TreeFile | null }>(() => ({ draft: null }));
  const draws = createDrawWork(editor, view);
  const look = flatLook(south);
  let state = idleHand;
  const feed = (event: HandEvent): void => {
    const step = handStep(state, event, 'draw');
    state = step.state;
    for (const effect of step.effects) {
      if (effect.do === 'begin') draws.begin('east', look, [effect.x, effect.y], 24);
      else if (effect.do === 'draw') {
        draws.to([effect.x, effect.y]);
        draws.show(false);
      } else if (effect.do === 'keep') draws.keep();
      else if (effect.do === 'drop') draws.drop();
    }
  };
  return { editor, view, draws, look, feed, drawing: () => isDrawing(state) };
}

describe('a stroke in hand', () => {
  it('is one step of undo, and what is undone is the tree as it was', () => {
    const { editor, view, look, feed } = bench();
    const [x, y] = seenAt(look, [0.21, 0.9, -0.03]);
    for (const event of [down(1, x, y), move(1, x + 40, y - 70), move(1, x + 60, y - 130)]) feed(event);
    expect(view.getState().draft?.axes).toHaveLength(smallTree.axes.length + 1);
    expect(editor.file()).toBe(smallTree);
    feed(lift(1, x + 60, y - 130));
    expect(view.getState().draft).toBeNull();
    expect(editor.file().axes).toHaveLength(smallTree.axes.length + 1);
    expect(editor.store.getState().history.past).toHaveLength(1);
    editor.undo();
    expect(editor.file()).toBe(smallTree);
  });

  it(`leaves the document byte for byte through 1 000 pinches, palms and lost pointers, seed ${seed}`, () => {
    const { editor, view, draws, feed, drawing } = bench();
    const before = writeTreeFile(editor.file());
    let begun = 0;
    for (let n = 0; n < 1000; n++) {
      const r = (k: number): number => random01(seed, n, k);
      const moves = (id: number, k: number): void => {
        for (let i = 0; i < 1 + 6 * r(k); i++) {
          feed(move(id, 600 * random01(seed, n, k, i, 1), 800 * random01(seed, n, k, i, 2)));
          if (drawing()) begun += 1;
        }
      };
      feed(down(1, 600 * r(1), 800 * r(2)));
      moves(1, 3);
      const ending = Math.floor(4 * r(4));
      if (ending === 0) feed({ type: 'cancel', pointerId: 1 });
      else if (ending === 1) feed({ type: 'stop' });
      else {
        feed(down(2, 600 * r(5), 800 * r(6)));
        moves(r(7) < 0.5 ? 1 : 2, 8);
        if (ending === 3) feed(down(3, 600 * r(9), 800 * r(10)));
      }
      // In any order, some lifted and some taken away.
      for (const id of r(11) < 0.5 ? [1, 2, 3] : [3, 2, 1]) {
        moves(id, 12 + id);
        feed(random01(seed, n, 20, id) < 0.7 ? lift(id, 300, 400) : { type: 'cancel', pointerId: id });
      }
      expect(drawing()).toBe(false);
      expect(view.getState().draft).toBeNull();
    }
    expect(begun).toBeGreaterThan(1000);
    expect(writeTreeFile(editor.file())).toBe(before);
    expect(editor.store.getState().history.past).toEqual([]);
    expect(draws.store.getState().stroke).toBeNull();
  });
});
