import { PerspectiveCamera } from 'three';
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { LeafSlice, nearSideOf } from '../../../src/ui/scene/leafSlice.ts';

const trunk: Vec3 = [0.7, 0, -0.4];
const all = { isCutAway: false, heightsM: null };

function eyeAt(at: Vec3, target: Vec3 = [0.7, 0.9, -0.4]): PerspectiveCamera {
  const camera = new PerspectiveCamera();
  camera.position.set(...at);
  camera.lookAt(...target);
  camera.updateMatrixWorld();
  return camera;
}

describe('the slice through the leaves', () => {
  it('leaves out nothing at first, wherever the eye is', () => {
    const slice = new LeafSlice();
    slice.turnTo(eyeAt([3, 1, 2]), trunk);
    for (const point of [
      [0, 0, 0],
      [3, 9, 2],
      [-40, -1, 40],
    ] as const)
      expect(slice.hides(point)).toBe(false);
  });

  it('leaves out what is nearer to the eye than the trunk, and turns with the eye', () => {
    const slice = new LeafSlice();
    slice.set({ ...all, isCutAway: true });
    const [east, west]: Vec3[] = [
      [1.1, 1.3, -0.4],
      [0.5, 1.3, -0.4],
    ];
    slice.turnTo(eyeAt([4.7, 2.1, -0.4]), trunk);
    expect([slice.hides(east as Vec3), slice.hides(west as Vec3)]).toEqual([true, false]);
    slice.turnTo(eyeAt([-3.3, 0.6, -0.4]), trunk);
    expect([slice.hides(east as Vec3), slice.hides(west as Vec3)]).toEqual([false, true]);
    slice.set(all);
    expect([slice.hides(east as Vec3), slice.hides(west as Vec3)]).toEqual([false, false]);
  });

  it('cuts upright, however high the eye is, and from above on the side of the lower edge', () => {
    const high = nearSideOf([0.48, 0.8, 0.36], [0, 1, 0]);
    expect(high[1]).toBe(0);
    expect(high[0]).toBeCloseTo(0.8, 12);
    expect(high[2]).toBeCloseTo(0.6, 12);
    // Up in the picture is north-east, so its lower edge lies in the south-west.
    expect(nearSideOf([0, 1, 0], [0.6, 0, -0.8])).toEqual([-0.6, 0, 0.8]);
  });

  it('leaves out what is below or above the heights that are asked for', () => {
    const slice = new LeafSlice();
    slice.set({ ...all, heightsM: [0.45, 1.15] });
    const hides = [0.44, 0.45, 0.8, 1.15, 1.16].map((y) => slice.hides([0.2, y, 5]));
    expect(hides).toEqual([true, false, false, false, true]);
  });
});
