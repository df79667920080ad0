/** What can meet what along a beam, told by balls round things: so that few rays or few surfaces cost little. */
import { type Outline, type OutlineBox, outlineBox } from '../../geometry/outline.ts';
import type { Blade, Mesh, Receiver, Surface } from '../../geometry/surface.ts';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import { along, type BeamFrame, type Rectangle } from './receiverGrid.ts';

/** Four numbers a ball: middle x, y, z and radius, metres; the radius is minus infinity where there is nothing. */
const stride = 4;

interface Bounds {
  readonly low: [number, number, number];
  readonly high: [number, number, number];
}

const nothing = (): Bounds => ({
  low: [Infinity, Infinity, Infinity],
  high: [-Infinity, -Infinity, -Infinity],
});

function widen({ low, high }: Bounds, point: ArrayLike<number>, at: number, radius: number): void {
  for (const k of [0, 1, 2] as const) {
    const x = point[at + k] as number;
    low[k] = Math.min(low[k], x - radius);
    high[k] = Math.max(high[k], x + radius);
  }
}

/** Middle and half size of a box, a hair more than rounding can take away; without size where there is nothing. */
function boxOf({ low, high }: Bounds): [middle: Vec3, half: Vec3] {
  if (!(high[0] >= low[0])) {
    return [
      [0, 0, 0],
      [-Infinity, -Infinity, -Infinity],
    ];
  }
  const middle = (k: 0 | 1 | 2): number => (low[k] + high[k]) / 2;
  const half = (k: 0 | 1 | 2): number => ((high[k] - low[k]) / 2) * (1 + 1e-9) + 1e-12 * Math.abs(high[k]);
  return [
    [middle(0), middle(1), middle(2)],
    [half(0), half(1), half(2)],
  ];
}

/** The ball round a box. */
function ballOf(bounds: Bounds): [number, number, number, number] {
  const [middle, half] = boxOf(bounds);
  return [...middle, half[0] < 0 ? -Infinity : Math.hypot(...half)];
}

function widenByBlade(bounds: Bounds, { origin, along: u, across: v }: Blade, box: OutlineBox): void {
  const { minU, maxU, minV, maxV } = box;
  for (const i of [minU, maxU]) {
    for (const j of [minV, maxV]) {
      const at = (k: 0 | 1 | 2): number => origin[k] + i * u[k] + j * v[k];
      widen(bounds, [at(0), at(1), at(2)], 0, 0);
    }
  }
}

/** Half the longer diagonal of a blade's box: less than half that of the upright box round it. */
function bladeRadiusM({ along: u, across: v }: Blade, { minU, maxU, minV, maxV }: OutlineBox): number {
  const diagonal = (sign: number): number => {
    const at = (k: 0 | 1 | 2): number => (maxU - minU) * u[k] + sign * (maxV - minV) * v[k];
    return Math.hypot(at(0), at(1), at(2));
  };
  // A hair more than rounding can take away.
  return (Math.max(diagonal(1), diagonal(-1)) / 2) * (1 + 1e-9) + 1e-9 * Math.hypot(...u);
}

function widenByMesh(bounds: Bounds, { triangles }: Mesh): void {
  for (let at = 0; at < triangles.length; at += 3) widen(bounds, triangles, at, 0);
}

/** @param boxes of the outlines met so far */
function widenBy(bounds: Bounds, surface: Surface, boxes: Map<Outline, OutlineBox>): void {
  switch (surface.shape) {
    case 'blade': {
      const box = boxes.get(surface.outline) ?? outlineBox(surface.outline);
      boxes.set(surface.outline, box);
      widenByBlade(bounds, surface, box);
      return;
    }
    case 'mesh':
      widenByMesh(bounds, surface);
      return;
    case 'stem':
      widen(bounds, surface.from, 0, surface.fromRadiusM);
      widen(bounds, surface.to, 0, surface.toRadiusM);
      return;
    case 'cloud':
      widen(bounds, surface.centre, 0, Math.hypot(...surface.halfSizeM));
  }
}

/** Per surface 1 where some receiver may be behind it, 0 where none can be; null where all are to be asked. */
export type Reach = (frame: BeamFrame) => Uint8Array | null;

/** So many surfaces a receiver make it worth asking which can matter. */
const worthwhile = 8;

/** Balls of surfaces, told from the middle of `from`. */
function ballsOf(surfaces: readonly Surface[], from: ArrayLike<number>): Float64Array {
  const balls = new Float64Array(stride * surfaces.length);
  const boxes = new Map<Outline, OutlineBox>();
  surfaces.forEach((surface, s) => {
    const bounds = nothing();
    widenBy(bounds, surface, boxes);
    balls.set(ballOf(bounds), stride * s);
    if (surface.shape === 'blade') {
      balls[stride * s + 3] = bladeRadiusM(surface, boxes.get(surface.outline) as OutlineBox);
    }
    for (let k = 0; k < 3; k++) {
      balls[stride * s + k] = (balls[stride * s + k] as number) - (from[k] as number);
    }
  });
  return balls;
}

/** Neighbours in the list of surfaces that share a ball: leaves of one shoot come one after another. */
const run = 12;

/** Balls round runs of balls. */
function ballsOfRuns(balls: Float64Array): Float64Array {
  const count = balls.length / stride;
  const ofRuns = new Float64Array(stride * Math.ceil(count / run));
  for (let first = 0, at = 0; first < count; first += run, at += stride) {
    const bounds = nothing();
    for (let s = first; s < Math.min(count, first + run); s++) {
      const radius = balls[stride * s + 3] as number;
      if (radius >= 0) widen(bounds, balls, stride * s, radius);
    }
    ofRuns.set(ballOf(bounds), at);
  }
  return ofRuns;
}

/** Half the size of a box round the origin along an axis. */
const halfAlong = (half: Vec3, axis: Vec3): number =>
  half[0] * Math.abs(axis[0]) + half[1] * Math.abs(axis[1]) + half[2] * Math.abs(axis[2]);

/**
 * For few receivers close together: tells the surfaces that may lie ahead of some from those that cannot. The array is used
 * again each time.
 */
export function makeReach(surfaces: readonly Surface[], receivers: readonly Receiver[]): Reach {
  if (receivers.length * worthwhile > surfaces.length) return () => null;
  const around = nothing();
  for (const { point } of receivers) widen(around, point, 0, 0);
  const [middle, half] = boxOf(around);
  const ofEach = ballsOf(surfaces, middle);
  const ofRuns = ballsOfRuns(ofEach);
  const reached = new Uint8Array(surfaces.length);
  return (frame) => {
    const { right, top, ahead } = frame;
    const [r, t, a] = [halfAlong(half, right), halfAlong(half, top), halfAlong(half, ahead)];
    const isNear = (balls: Float64Array, at: number): boolean => {
      const radius = balls[at + 3] as number;
      if (!(Math.abs(along(balls, at, right)) <= r + radius)) return false;
      return Math.abs(along(balls, at, top)) <= t + radius && along(balls, at, ahead) >= -a - radius;
    };
    reached.fill(0);
    for (let first = 0, at = 0; first < reached.length; first += run, at += stride) {
      if (!isNear(ofRuns, at)) continue;
      const end = Math.min(reached.length, first + run);
      for (let s = first; s < end; s++) if (isNear(ofEach, stride * s)) reached[s] = 1;
    }
    return reached;
  };
}

/** A rectangle on the plane across the beam that holds the shade of all surfaces; null where all receivers are to be asked. */
export type Shade = (frame: BeamFrame) => Rectangle | null;

/** For few surfaces close together, seen by many receivers. */
export function makeShade(surfaces: readonly Surface[], receivers: readonly Receiver[]): Shade {
  if (surfaces.length * worthwhile > receivers.length) return () => null;
  const [around, boxes] = [nothing(), new Map<Outline, OutlineBox>()];
  for (const surface of surfaces) widenBy(around, surface, boxes);
  const [middle, half] = boxOf(around);
  return ({ right, top }) => ({
    right: dot(middle, right),
    top: dot(middle, top),
    halfRight: halfAlong(half, right),
    halfTop: halfAlong(half, top),
  });
}
