/** Selecting by click or tap, hovering by mouse or pen, drawing where the hand draws. */
import { useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import type { PointerKind } from './draw/gesture.ts';
import { useHand } from './draw/useHand.ts';
import type { Pencil, StageProps } from './stageModel.ts';
import type { Eye } from './useEye.ts';

/** How near to thin wood counts as on it, pixels. */
const reachPxOf = (pointerType: string): number => (pointerType === 'touch' ? 22 : 8);

export interface PointerProps {
  readonly eye: Eye;
  /** Null: a hand only looks. */
  readonly pencil: Pencil | null;
  readonly onSelect: StageProps['onSelect'];
  readonly onHover: (id: string | null) => void;
}

export function Pointer(props: PointerProps) {
  const { eye, pencil, onSelect, onHover } = props;
  const canvas = useThree((state) => state.gl.domElement);
  const woodAt = (x: number, y: number, kind: PointerKind): string | null =>
    eye.woodAt(x, y, reachPxOf(kind));
  useHand(canvas, {
    hand: pencil === null ? 'look' : 'draw',
    isOn: (x, y, kind) => pencil !== null && (pencil.isAnywhere || woodAt(x, y, kind) !== null),
    begin: (x, y, kind) => pencil?.begin(woodAt(x, y, kind), [x, y], kind),
    to: (x, y) => pencil?.to([x, y]),
    show: (isFree) => pencil?.show(isFree),
    keep: () => pencil?.keep(),
    drop: () => pencil?.drop(),
    tap: (x, y, kind) => {
      const { target, among } = eye.pickNear(x, y, reachPxOf(kind), kind);
      onSelect(target?.id ?? null, target?.shape === 'face' ? target.node : null, {
        taken: target?.id ?? null,
        among,
        at: [x, y],
      });
    },
  });
  useHover(canvas, eye, onHover);
  return null;
}

function useHover(canvas: HTMLCanvasElement, eye: Eye, onHover: PointerProps['onHover']): void {
  const latest = useRef({ eye, onHover });
  useEffect(() => {
    latest.current = { eye, onHover };
  });
  useEffect(() => {
    const listening = new AbortController();
    const { signal } = listening;
    let hovering = 0;
    let hovered: string | null = null;
    const hover = (id: string | null): void => {
      if (id === hovered) return;
      hovered = id;
      latest.current.onHover(id);
    };
    const move = (event: PointerEvent): void => {
      if (event.pointerType === 'touch' || event.buttons !== 0) return;
      cancelAnimationFrame(hovering);
      hovering = requestAnimationFrame(() => {
        const box = canvas.getBoundingClientRect();
        const [x, y] = [event.clientX - box.left, event.clientY - box.top];
        hover(latest.current.eye.pickAt(x, y, reachPxOf(event.pointerType))?.id ?? null);
      });
    };
    const leave = (): void => {
      cancelAnimationFrame(hovering);
      hover(null);
    };
    canvas.addEventListener('pointermove', move, { signal });
    canvas.addEventListener('pointerleave', leave, { signal });
    canvas.addEventListener('pointercancel', leave, { signal });
    return () => {
      cancelAnimationFrame(hovering);
      listening.abort();
    };
  }, [canvas]);
}
