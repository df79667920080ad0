/**
 * Dragging in a picture by thumb, pen, mouse or arrow keys. One hold is one change: it is shown while it lasts, made
 * when it ends, and dropped by Escape or by a second finger.
 */
import { type KeyboardEvent, type PointerEvent, useCallback, useEffect, useRef } from 'react';

export interface GripEvents {
  /** So far from where it was taken hold of, in the picture's own units, x right and y down. */
  readonly drag: (dx: number, dy: number) => void;
  /** So many steps right and down since the first arrow key. */
  readonly step: (right: number, down: number) => void;
  readonly done: () => void;
  readonly drop: () => void;
  /** Not to be moved yet: a thumb that scrolls must not take along what it meets. */
  readonly isFixed?: boolean;
}

/** A hold that moves less is a tap, CSS pixels. */
const tapPx = 4;
/** Steps of an arrow key with Shift. */
const longStep = 10;
const arrows: Readonly<Record<string, readonly [right: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface Hold {
  readonly id: number;
  readonly x: number;
  readonly y: number;
  /** Units of the picture in a CSS pixel. */
  readonly scale: number;
  hasMoved: boolean;
}

/** What is under way: a hold by the pointer, or steps by the keys. */
interface Under {
  hold: Hold | null;
  steps: readonly [right: number, down: number] | null;
}

export function useGrip(events: GripEvents) {
  const under = useRef<Under>({ hold: null, steps: null });
  const latest = useRef(events);
  useEffect(() => {
    latest.current = events;
  });
  useEffect(() => {
    const onPointer = (event: globalThis.PointerEvent) => {
      const { hold } = under.current;
      if (hold === null || event.pointerId === hold.id) return;
      under.current.hold = null;
      latest.current.drop();
    };
    addEventListener('pointerdown', onPointer, true);
    return () => removeEventListener('pointerdown', onPointer, true);
  }, []);
  // CSS cannot keep a part of a picture from scrolling the page, and React listens too late to stop it.
  const ref = useCallback((element: SVGGElement) => {
    const onTouch = (event: TouchEvent) => {
      if (latest.current.isFixed !== true && event.touches.length === 1) event.preventDefault();
    };
    element.addEventListener('touchstart', onTouch, { passive: false });
    return () => element.removeEventListener('touchstart', onTouch);
  }, []);
  return { ref, ...pointerEvents(under, events), ...keyEvents(under, events) };
}

type Held = { current: Under };

/** Ends what is under way; a mere tap changes nothing. */
function release(under: Held, act: () => void): void {
  const { hold, steps } = under.current;
  under.current = { hold: null, steps: null };
  if (hold?.hasMoved === true || steps !== null) act();
}

const pointerEvents = (under: Held, events: GripEvents) => ({
  onPointerDown: (event: PointerEvent<SVGGElement>) => {
    if (events.isFixed === true || !event.isPrimary || event.button !== 0) return;
    const svg = event.currentTarget.ownerSVGElement;
    if (svg === null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const scale = svg.viewBox.baseVal.width / svg.getBoundingClientRect().width;
    const { pointerId: id, clientX: x, clientY: y } = event;
    under.current.hold = { id, x, y, scale, hasMoved: false };
  },
  onPointerMove: (event: PointerEvent<SVGGElement>) => {
    const { hold } = under.current;
    if (hold === null || hold.id !== event.pointerId) return;
    const [dx, dy] = [event.clientX - hold.x, event.clientY - hold.y];
    hold.hasMoved ||= Math.hypot(dx, dy) > tapPx;
    if (hold.hasMoved) events.drag(dx * hold.scale, dy * hold.scale);
  },
  onPointerUp: () => release(under, events.done),
  onPointerCancel: () => release(under, events.drop),
});

const keyEvents = (under: Held, events: GripEvents) => ({
  onKeyDown: (event: KeyboardEvent<SVGGElement>) => {
    const arrow = events.isFixed === true ? undefined : arrows[event.key];
    if (arrow !== undefined && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      const times = event.shiftKey ? longStep : 1;
      const [right, down] = under.current.steps ?? [0, 0];
      under.current.steps = [right + times * arrow[0], down + times * arrow[1]];
      events.step(...under.current.steps);
    } else if (event.key === 'Escape' && (under.current.hold !== null || under.current.steps !== null)) {
      event.preventDefault();
      event.stopPropagation();
      release(under, events.drop);
    }
  },
  onKeyUp: (event: KeyboardEvent<SVGGElement>) => {
    if (arrows[event.key] !== undefined && under.current.steps !== null) release(under, events.done);
  },
  onBlur: () => {
    if (under.current.steps !== null) release(under, events.done);
  },
});
