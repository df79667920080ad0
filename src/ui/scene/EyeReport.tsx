/** Tells the page outside the picture where the eye stands, whenever it has moved. */
import { useFrame } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { stageEyeOf } from './stageEye.ts';
import type { StageEye } from './stageModel.ts';

interface EyeReportProps {
  readonly onEye: (eye: StageEye | null) => void;
}

export function EyeReport({ onEye }: EyeReportProps) {
  const told = useRef('');
  useFrame(({ camera, size }) => {
    camera.updateMatrixWorld();
    const { width, height } = size;
    const now = [width, height, ...camera.matrixWorld.elements, ...camera.projectionMatrix.elements].join();
    if (now === told.current) return;
    told.current = now;
    onEye(stageEyeOf(camera, { width, height }));
  });
  useEffect(() => () => onEye(null), [onEye]);
  return null;
}
