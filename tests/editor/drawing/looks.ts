/** Eyes to draw through, without a stage. */
import type { Look } from '../../../src/editor/drawing/look.ts';
import { spanOf } from '../../../src/editor/pull/inPlane.ts';
import { add, dot, normalize, scale, sub, type Vec3 } from '../../../src/geometry/vec.ts';

/** An eye far away: a metre is `pxPerM` pixels everywhere, the origin is seen at 311, 402. */
export function flatLook(facing: Vec3, pxPerM = 240): Look {
  const [right, upward] = spanOf(facing);
  return {
    facing,
    project: (point) => [311 + pxPerM * dot(right, point), 402 - pxPerM * dot(upward, point), 9],
    sightAt: (x, y) => ({
      from: add(scale(facing, 9), add(scale(right, (x - 311) / pxPerM), scale(upward, (402 - y) / pxPerM))),
      way: scale(facing, -1),
      facing,
    }),
  };
}

/** An eye near by, looking at `target`; a metre is `pxAtOneM` pixels at one metre. */
export function nearLook(eye: Vec3, target: Vec3, pxAtOneM = 1400): Look {
  const facing = normalize(sub(eye, target));
  const [right, upward] = spanOf(facing);
  return {
    facing,
    project: (point) => {
      const off = sub(point, eye);
      const depthM = -dot(off, facing);
      if (depthM <= 0.05) return null;
      const px = pxAtOneM / depthM;
      return [311 + px * dot(right, off), 402 - px * dot(upward, off), depthM];
    },
    sightAt: (x, y) => ({
      from: eye,
      way: normalize(
        add(scale(facing, -1), add(scale(right, (x - 311) / pxAtOneM), scale(upward, (402 - y) / pxAtOneM))),
      ),
      facing,
    }),
  };
}

export const south: Vec3 = [0, 0, 1];
export const east: Vec3 = [1, 0, 0];
export const above: Vec3 = [0, 1, 0];
