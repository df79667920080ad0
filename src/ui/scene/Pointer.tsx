/** Selecting and hovering, and the data that browser tests ask for. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { type PerspectiveCamera, Vector3 } from 'three';
import type { Vec3 } from '../../geometry/vec.ts';
import { type Pixel, pick, type Target } from './pick.ts';
import type { StageProbe } from './stageModel.ts';

declare global {
  interface Window {
    boughlightStage?: StageProbe;
  }
}

/** A press that moved farther than this was a turn of the camera, pixels. */
const stillPx = 6;
/** How near to thin wood counts as on it, pixels. */
const reachPxOf = (pointerType: string): number => (pointerType === 'touch' ? 22 : 8);

export interface PointerProps {
  readonly targets: readonly Target[];
  readonly onSelect: (id: string | null) => void;
  readonly onHover: (id: string | null) => void;
}

/** Projection by the camera as it stands now, and picking through it. */
function useEye(targets: readonly Target[]) {
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const size = useThree((state) => state.size);
  return useMemo(() => {
    const at = new Vector3();
    const project = (point: Vec3): Pixel | null => {
      at.set(...point).applyMatrix4(camera.matrixWorldInverse);
      const depthM = -at.z;
      if (depthM <= camera.near) return null;
      at.applyMatrix4(camera.projectionMatrix);
      return [((at.x + 1) / 2) * size.width, ((1 - at.y) / 2) * size.height, depthM];
    };
    const pickAt = (x: number, y: number, reachPx: number): string | null => {
      camera.updateMatrixWorld();
      const pxPerRadian = size.height / (2 * Math.tan((camera.fov * Math.PI) / 360));
      return pick(targets, project, x, y, { reachPx, pxPerRadian });
    };
    return { camera, project, pickAt };
  }, [camera, size, targets]);
}

export function Pointer({ targets, onSelect, onHover }: PointerProps) {
  const gl = useThree((state) => state.gl);
  const frames = useRef(0);
  useFrame(() => {
    frames.current += 1;
  });
  const { camera, project, pickAt } = useEye(targets);

  useEffect(() => {
    const canvas = gl.domElement;
    const lifted = new AbortController();
    const { signal } = lifted;
    let pressed: { id: number; x: number; y: number } | null = null;
    let hovering = 0;
    const at = (event: PointerEvent): [number, number] => {
      const box = canvas.getBoundingClientRect();
      return [event.clientX - box.left, event.clientY - box.top];
    };
    const press = (event: PointerEvent): void => {
      pressed =
        event.isPrimary && event.button === 0
          ? { id: event.pointerId, x: event.clientX, y: event.clientY }
          : null;
    };
    const lift = (event: PointerEvent): void => {
      const from = pressed;
      pressed = null;
      if (from === null || from.id !== event.pointerId) return;
      if (Math.hypot(event.clientX - from.x, event.clientY - from.y) > stillPx) return;
      onSelect(pickAt(...at(event), reachPxOf(event.pointerType)));
    };
    const move = (event: PointerEvent): void => {
      if (event.pointerType === 'touch' || event.buttons !== 0) return;
      cancelAnimationFrame(hovering);
      hovering = requestAnimationFrame(() => onHover(pickAt(...at(event), reachPxOf(event.pointerType))));
    };
    const leave = (): void => {
      cancelAnimationFrame(hovering);
      pressed = null;
      onHover(null);
    };
    canvas.addEventListener('pointerdown', press, { signal });
    canvas.addEventListener('pointerup', lift, { signal });
    canvas.addEventListener('pointermove', move, { signal });
    canvas.addEventListener('pointerleave', leave, { signal });
    canvas.addEventListener('pointercancel', leave, { signal });
    return () => {
      cancelAnimationFrame(hovering);
      lifted.abort();
    };
  }, [gl, pickAt, onSelect, onHover]);

  useEffect(() => {
    window.boughlightStage = {
      project: (point) => {
        camera.updateMatrixWorld();
        const pixel = project(point);
        return pixel === null ? null : [pixel[0], pixel[1]];
      },
      pick: (x, y) => pickAt(x, y, reachPxOf('mouse')),
      drawCalls: () => gl.info.render.calls,
      triangles: () => gl.info.render.triangles,
      frames: () => frames.current,
    };
    return () => {
      delete window.boughlightStage;
    };
  }, [camera, gl, project, pickAt]);
  return null;
}
