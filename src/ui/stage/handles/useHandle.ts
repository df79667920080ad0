/**
 * One handle under a finger, a pen, a mouse or the arrow keys. One hold is one change: shown while it lasts, kept when the hand lets
 * go or by Enter, dropped by Escape, by a second finger and when the browser takes the finger away.
 */
import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react';

export interface HandleActs {
  readonly begin: () => void;
  /** So far from where it was taken hold of, CSS pixels. */
  readonly drag: (dx: number, dy: number) => void;
  /** So many steps right and up since the first arrow key; tenths are small ones. */
  readonly step: (right: number, upwards: number) => void;
  readonly keep: () => void;
  readonly drop: () => void;
}

/** A hold that moves less is a tap, CSS pixels. */
const tapPx = 4;
const smallStep = 0.1;
const arrows: Readonly<Record<string, readonly [right: number, upwards: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

interface Hold {
  readonly pointerId: number;
  readonly x: number;
  readonly y: number;
  hasMoved: boolean;
}

interface Under {
  hold: Hold | null;
  steps: readonly [right: number, upwards: number] | null;
  /** The next picture in which the hand's place is shown. */
  frame: number;
}

export function useHandle(acts: HandleActs) {
  const under = useRef<Under>({ hold: null, steps: null, frame: 0 });
  const latest = useRef(acts);
  useEffect(() => {
    latest.current = acts;
  });
  useEffect(() => {
    const held = under.current;
    const onPointer = (event: globalThis.PointerEvent) => {
      if (held.hold === null || event.pointerId === held.hold.pointerId) return;
      // Nor does the second finger begin anything of its own: the first is still down.
      event.stopPropagation();
      end(held, latest.current.drop);
    };
    const onKey = (event: globalThis.KeyboardEvent) => {
      if (event.key !== 'Escape' || held.hold === null) return;
      event.preventDefault();
      event.stopPropagation();
      end(held, latest.current.drop);
    };
    const listening = new AbortController();
    const capturing = { capture: true, signal: listening.signal };
    addEventListener('pointerdown', onPointer, capturing);
    addEventListener('keydown', onKey, capturing);
    return () => {
      listening.abort();
      // A handle that goes while it is held, with its branch or its picture, leaves nothing behind.
      if (held.hold !== null || held.steps !== null) end(held, latest.current.drop);
    };
  }, []);
  return { ...pointerEvents(under, acts), ...keyEvents(under, acts) };
}

/** Ends what is under way. */
function end(held: Under, act: () => void): void {
  cancelAnimationFrame(held.frame);
  held.hold = null;
  held.steps = null;
  act();
}

type Held = { readonly current: Under };

const pointerEvents = (under: Held, acts: HandleActs) => ({
  onPointerDown: (event: PointerEvent<HTMLElement>) => {
    if (!event.isPrimary || event.button !== 0) return;
    if (under.current.steps !== null) end(under.current, acts.keep);
    event.currentTarget.setPointerCapture(event.pointerId);
    const { pointerId, clientX: x, clientY: y } = event;
    under.current.hold = { pointerId, x, y, hasMoved: false };
    acts.begin();
  },
  onPointerMove: (event: PointerEvent<HTMLElement>) => {
    const { hold } = under.current;
    if (hold === null || hold.pointerId !== event.pointerId) return;
    const [dx, dy] = [event.clientX - hold.x, event.clientY - hold.y];
    hold.hasMoved ||= Math.hypot(dx, dy) > tapPx;
    if (!hold.hasMoved) return;
    cancelAnimationFrame(under.current.frame);
    under.current.frame = requestAnimationFrame(() => acts.drag(dx, dy));
  },
  onPointerUp: (event: PointerEvent<HTMLElement>) => {
    const { hold } = under.current;
    if (hold === null || hold.pointerId !== event.pointerId) return;
    cancelAnimationFrame(under.current.frame);
    if (hold.hasMoved) acts.drag(event.clientX - hold.x, event.clientY - hold.y);
    end(under.current, hold.hasMoved ? acts.keep : acts.drop);
  },
  onPointerCancel: () => {
    if (under.current.hold !== null) end(under.current, acts.drop);
  },
  onContextMenu: (event: { preventDefault: () => void }) => event.preventDefault(),
});

const keyEvents = (under: Held, acts: HandleActs) => ({
  onKeyDown: (event: KeyboardEvent<HTMLElement>) => {
    const { steps, hold } = under.current;
    const arrow = arrows[event.key];
    const isPlain = !(event.altKey || event.ctrlKey || event.metaKey);
    if (arrow !== undefined && isPlain && hold === null) {
      const times = event.shiftKey ? smallStep : 1;
      if (steps === null) acts.begin();
      const [right, upwards] = steps ?? [0, 0];
      under.current.steps = [right + times * arrow[0], upwards + times * arrow[1]];
      acts.step(...under.current.steps);
    } else if (steps !== null && event.key === 'Enter') end(under.current, acts.keep);
    else if (steps !== null && event.key === 'Escape') end(under.current, acts.drop);
    else return;
    event.preventDefault();
    event.stopPropagation();
  },
  onBlur: () => {
    if (under.current.steps !== null) end(under.current, acts.keep);
  },
});
