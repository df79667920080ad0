/** Selecting by click or tap, hovering by mouse or pen. */
import { useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import type { Target } from './pick.ts';
import type { Eye } from './useEye.ts';

/** A press that moved farther than this was a turn of the camera, pixels. */
const stillPx = 6;
/** How near to thin wood counts as on it, pixels. */
const reachPxOf = (pointerType: string): number => (pointerType === 'touch' ? 22 : 8);

export interface PointerProps {
  readonly eye: Eye;
  readonly onSelect: (id: string | null, node: number | null) => void;
  readonly onHover: (id: string | null) => void;
}

export function Pointer(props: PointerProps) {
  const canvas = useThree((state) => state.gl.domElement);
  // A press must outlive a new picture between down and up.
  const latest = useRef(props);
  useEffect(() => {
    latest.current = props;
  });
  useEffect(() => {
    const listening = new AbortController();
    let pressed: { id: number; x: number; y: number } | null = null;
    let hovering = 0;
    let hovered: string | null = null;
    const hover = (id: string | null): void => {
      if (id === hovered) return;
      hovered = id;
      latest.current.onHover(id);
    };
    const under = (event: PointerEvent): Target | null => {
      const box = canvas.getBoundingClientRect();
      return latest.current.eye.pickAt(
        event.clientX - box.left,
        event.clientY - box.top,
        reachPxOf(event.pointerType),
      );
    };
    const press = ({ isPrimary, button, pointerId: id, clientX: x, clientY: y }: PointerEvent): void => {
      // A second finger turns the picture: no selection comes of that.
      pressed = isPrimary && button === 0 ? { id, x, y } : null;
    };
    const lift = (event: PointerEvent): void => {
      const from = pressed;
      pressed = null;
      if (from === null || from.id !== event.pointerId) return;
      if (Math.hypot(event.clientX - from.x, event.clientY - from.y) > stillPx) return;
      const target = under(event);
      latest.current.onSelect(target?.id ?? null, target?.shape === 'face' ? target.node : null);
    };
    const move = (event: PointerEvent): void => {
      if (event.pointerType === 'touch' || event.buttons !== 0) return;
      cancelAnimationFrame(hovering);
      hovering = requestAnimationFrame(() => hover(under(event)?.id ?? null));
    };
    const leave = (): void => {
      cancelAnimationFrame(hovering);
      pressed = null;
      hover(null);
    };
    const { signal } = listening;
    canvas.addEventListener('pointerdown', press, { signal });
    canvas.addEventListener('pointerup', lift, { signal });
    canvas.addEventListener('pointermove', move, { signal });
    canvas.addEventListener('pointerleave', leave, { signal });
    canvas.addEventListener('pointercancel', leave, { signal });
    return () => {
      cancelAnimationFrame(hovering);
      listening.abort();
    };
  }, [canvas]);
  return null;
}
