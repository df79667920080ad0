/** Data about the stage for browser tests; see StageProbe. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import type { StageProbe } from './stageModel.ts';
import type { Eye } from './useEye.ts';

declare global {
  interface Window {
    boughlightStage?: StageProbe;
  }
}

const mouseReachPx = 8;

export function Probe({ eye }: { readonly eye: Eye }) {
  const gl = useThree((state) => state.gl);
  const frames = useRef(0);
  useFrame(() => {
    frames.current += 1;
  });
  useEffect(() => {
    window.boughlightStage = {
      project: (point) => {
        const pixel = eye.project(point);
        return pixel === null ? null : [pixel[0], pixel[1]];
      },
      pick: (x, y) => eye.pickAt(x, y, mouseReachPx)?.id ?? null,
      drawCalls: () => gl.info.render.calls,
      triangles: () => gl.info.render.triangles,
      frames: () => frames.current,
    };
    return () => {
      delete window.boughlightStage;
    };
  }, [eye, gl]);
  return null;
}
