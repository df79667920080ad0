/** What stands between the eye and the tree turns to glass. */
import { useFrame } from '@react-three/fiber';
import { useRef } from 'react';
import type { MeshLambertMaterial } from 'three';
import type { Extent } from './extent.ts';
import { type Slab, standsBetween } from './slab.ts';
import { isSunEye } from './stageEye.ts';

/** Opacity of a thing in front of the tree. */
const glass = 0.12;

/** @param opacity of the thing where it hides nothing */
export function useGlass(slab: Slab, extent: Extent, opacity = 1) {
  const material = useRef<MeshLambertMaterial>(null);
  useFrame(({ camera }) => {
    if (material.current === null) return;
    const { x, y, z } = camera.position;
    // Seen from the sun, a wall hides what it shades.
    const inFront = !isSunEye(camera) && standsBetween(slab, extent.centre, [x, y, z]);
    material.current.opacity = inFront ? Math.min(glass, opacity) : opacity;
    material.current.transparent = inFront || opacity < 1;
    material.current.depthWrite = !inFront;
  });
  return material;
}
