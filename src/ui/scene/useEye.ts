/** The stage's projection as the camera stands now, and picking through it. */
import { useThree } from '@react-three/fiber';
import { useMemo } from 'react';
import { type OrthographicCamera, type PerspectiveCamera, Vector3 } from 'three';
import type { Vec3 } from '../../geometry/vec.ts';
import type { PointerKind } from './draw/gesture.ts';
import type { LeafSlice } from './leafSlice.ts';
import { type Picked, pickNear, spreadPx } from './nearPicks.ts';
import { type Pixel, type Project, pick, pickerOf, type Target, targetsNear } from './pick.ts';

/** Size of a metre in a picture of that height, so far before the eye; everywhere the same for an eye far away. */
export function pixelsPerMetre(
  camera: PerspectiveCamera | OrthographicCamera,
  heightPx: number,
  depthM: number,
): number {
  if ('isOrthographicCamera' in camera) return camera.zoom;
  return heightPx / (2 * Math.tan((camera.fov * Math.PI) / 360)) / depthM;
}

export interface Eye {
  /** CSS pixels of the canvas. */
  readonly project: Project;
  /** What lies at a pixel; wood counts as hit within `reachPx`. */
  readonly pickAt: (x: number, y: number, reachPx: number) => Target | null;
  /** The same, with what the press may have meant besides. */
  readonly pickNear: (x: number, y: number, reachPx: number, kind: PointerKind) => Picked;
  /** Id of the branch or bud whose wood is nearest to a pixel, within `reachPx`, through all leaves. */
  readonly woodAt: (x: number, y: number, reachPx: number) => string | null;
}

export function useEye(targets: readonly Target[], slice: LeafSlice): Eye {
  const camera = useThree((state) => state.camera);
  const size = useThree((state) => state.size);
  return useMemo(() => {
    const at = new Vector3();
    const projectAsIs = (point: Vec3): Pixel | null => {
      at.set(...point).applyMatrix4(camera.matrixWorldInverse);
      const depthM = -at.z;
      if (depthM <= camera.near) return null;
      at.applyMatrix4(camera.projectionMatrix);
      return [((at.x + 1) / 2) * size.width, ((1 - at.y) / 2) * size.height, depthM];
    };
    const project: Project = (point) => {
      camera.updateMatrixWorld();
      return projectAsIs(point);
    };
    const wood = targets.filter(({ shape }) => shape === 'wood');
    const pxPerM = (depthM: number): number => pixelsPerMetre(camera, size.height, depthM);
    // What is not drawn is not met.
    const seen = (): readonly Target[] => {
      camera.updateMatrixWorld();
      return targets.filter((target) => target.shape === 'wood' || !slice.hides(target.centre));
    };
    const pickAt = (x: number, y: number, reachPx: number): Target | null =>
      pick(seen(), projectAsIs, x, y, { reachPx, pxPerM });
    const near = (x: number, y: number, reachPx: number, kind: PointerKind): Picked => {
      const options = { reachPx, pxPerM };
      const around = targetsNear(seen(), projectAsIs, x, y, options, spreadPx);
      return pickNear(pickerOf(around, projectAsIs, options), x, y, kind);
    };
    const woodAt = (x: number, y: number, reachPx: number): string | null => {
      camera.updateMatrixWorld();
      return pick(wood, projectAsIs, x, y, { reachPx, pxPerM })?.id ?? null;
    };
    return { project, pickAt, pickNear: near, woodAt };
  }, [camera, size, targets, slice]);
}
