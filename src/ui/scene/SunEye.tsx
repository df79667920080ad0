/** The eye in the sun: all rays run side by side, and everything it sees is lit. */
import { OrthographicCamera } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { useLayoutEffect, useRef } from 'react';
import type { OrthographicCamera as Camera } from 'three';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { coveredBy } from './covered.ts';
import { canopyPoints, footPoints } from './extent.ts';
import { frameFromAfar } from './framing.ts';

export interface SunEyeProps {
  readonly canopy: Canopy;
  readonly file: TreeFile;
  /** Unit vector. */
  readonly toSun: Vec3;
}

export function SunEye({ canopy, file, toSun }: SunEyeProps) {
  const camera = useRef<Camera>(null);
  const size = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  useLayoutEffect(() => {
    const points = [...canopyPoints(canopy), ...footPoints(file)];
    const { eye, target, pxPerM } = frameFromAfar(points, toSun, size, coveredBy(size));
    if (camera.current === null) return;
    camera.current.position.set(...eye);
    camera.current.lookAt(...target);
    camera.current.zoom = pxPerM;
    camera.current.updateProjectionMatrix();
    camera.current.updateMatrixWorld();
    invalidate();
  }, [canopy, file, toSun, size, invalidate]);
  return <OrthographicCamera ref={camera} makeDefault near={0.05} far={200} userData={{ isSun: true }} />;
}
