import { OrthographicCamera, PerspectiveCamera } from 'three';
import { describe, expect, it } from 'vitest';
import { pointOnPlane } from '../../../src/editor/pull/sight.ts';
import { add, angleBetweenDeg, distance, scale, type Vec3 } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import {
  flatFraming,
  flatSides,
  frame,
  nearFraming,
  pictureAxes,
  viewDirection,
} from '../../../src/ui/scene/framing.ts';
import { stageEyeOf } from '../../../src/ui/scene/stageEye.ts';
import type { StageEye, StageView } from '../../../src/ui/scene/stageModel.ts';
import { viewWords } from '../../../src/ui/stage/viewWords.ts';

const size = { width: 391, height: 457 };
const covered = { above: 57, below: 71 };
const points: readonly Vec3[] = [
  [-0.7, 0.1, 0.4],
  [0.9, 1.7, -0.3],
  [0.2, 0.4, 1.1],
];

function flatEyeAt(toEye: Vec3): StageEye {
  const { eye, target, pxPerM } = flatFraming(points, toEye, size, covered);
  const camera = new OrthographicCamera(-195.5, 195.5, 228.5, -228.5, 0.05, 200);
  camera.zoom = pxPerM;
  camera.updateProjectionMatrix();
  camera.position.set(...eye);
  camera.lookAt(...target);
  camera.updateMatrixWorld();
  return stageEyeOf(camera, size) as StageEye;
}

function nearEyeAt(toEye: Vec3): StageEye {
  const { eye, target } = frame(points, toEye, 34, size.width / size.height, 0.07);
  const camera = new PerspectiveCamera(34, size.width / size.height, 0.05, 200);
  camera.position.set(...eye);
  camera.lookAt(...target);
  camera.updateMatrixWorld();
  return stageEyeOf(camera, size) as StageEye;
}

const seen = ({ side, facing }: StageEye): string => viewWords.seen(side, facing, pictureAxes(facing).right);

describe('the six views', () => {
  it.each([
    ['north', 'From the north, west on the right', [-1, 0, 0]],
    ['east', 'From the east, north on the right', [0, 0, -1]],
    ['south', 'From the south, east on the right', [1, 0, 0]],
    ['west', 'From the west, south on the right', [0, 0, 1]],
    ['above', 'From above, north at the top', [1, 0, 0]],
  ] as const)('from %s are told as "%s", and so the picture shows it', (side, words, right) => {
    const eye = flatEyeAt(viewDirection(side, 77));
    expect(eye.side).toBe(side);
    expect(seen(eye)).toBe(words);
    expect(eye.facing).toEqual(viewDirection(side, 77));
    const [here, there] = [eye.project([0, 0.5, 0]), eye.project(add([0, 0.5, 0], scale(right, 0.3)))];
    expect(there?.[0]).toBeGreaterThan((here?.[0] ?? Number.NaN) + 10);
    expect(there?.[1]).toBeCloseTo(here?.[1] ?? Number.NaN, 1);
    const up: Vec3 = side === 'above' ? [0, 0.5, -0.3] : [0, 0.8, 0];
    expect(eye.project(up)?.[1]).toBeLessThan((here?.[1] ?? Number.NaN) - 10);
  });

  it.each([
    [165, 14, 'From the south'],
    [215, 14, 'From the south-west'],
    [350, 50, 'From the north and above'],
  ])('the free one is told by its side: bearing %d, %d degrees high', (bearing, high, words) => {
    const eye = nearEyeAt(direction(bearing, high));
    expect(eye.side).toBe('free');
    expect(seen(eye)).toBe(words);
  });

  it('a side turned by hand is no longer that side', () => {
    const eye = flatEyeAt(direction(181, 0));
    expect(eye.side).toBeNull();
    expect(seen(eye)).toBe('From the south');
  });
});

describe('what a hand points at', () => {
  const eyes: readonly (readonly [StageView | 'turned', StageEye])[] = [
    ...flatSides.map((side) => [side, flatEyeAt(viewDirection(side, 0))] as const),
    ['turned', flatEyeAt(direction(203, 31))],
    ['free', nearEyeAt(direction(163, 17))],
  ];
  it.each(eyes)('lies under the pixel, seen from %s', (_, eye) => {
    const through: Vec3 = [0.31, 0.77, -0.23];
    for (const [x, y] of [
      [43, 71],
      [211, 305],
    ] as const) {
      const sight = eye.sightAt(x, y);
      const met = pointOnPlane(sight, through, sight.facing) as Vec3;
      const [seenX, seenY] = eye.project(met) ?? [Number.NaN, Number.NaN];
      expect(seenX).toBeCloseTo(x, 1);
      expect(seenY).toBeCloseTo(y, 1);
    }
  });

  it.each(flatSides)('keeps its depth to the last bit, seen from %s', (side) => {
    const through: Vec3 = [0.31, 0.77, -0.23];
    const depth = viewDirection(side, 0).findIndex((c) => Math.abs(c) === 1);
    const sight = flatEyeAt(viewDirection(side, 0)).sightAt(101, 67);
    expect(pointOnPlane(sight, through, sight.facing)?.[depth]).toBe(through[depth]);
  });
});

describe('nearFraming', () => {
  it('looks the same way and shows what lies in the middle as large', () => {
    const flat = flatFraming(points, [0, 0, 1], size, covered);
    const { eye, target } = nearFraming(flat, 34, size.height);
    expect(
      angleBetweenDeg([eye[0] - target[0], eye[1] - target[1], eye[2] - target[2]], [0, 0, 1]),
    ).toBeLessThan(1e-6);
    const pxPerM = size.height / (2 * Math.tan((17 * Math.PI) / 180) * distance(eye, target));
    expect(pxPerM).toBeCloseTo(flat.pxPerM, 9);
  });
});
