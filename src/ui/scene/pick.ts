/** What lies under a pointer, found in the picture rather than in space, so that thin wood can be hit too. */
import type { Vec3 } from '../../geometry/vec.ts';

/** A point in the picture: CSS pixels from the top left, and its distance before the eye in metres. */
export type Pixel = readonly [x: number, y: number, depthM: number];
/** Null behind the eye. */
export type Project = (point: Vec3) => Pixel | null;

export interface Face {
  readonly id: string;
  readonly shape: 'face';
  /** Of the leaf: its node on the shoot, 1 at the base. */
  readonly node: number;
  readonly corners: readonly Vec3[];
  /** All corners lie within `reachM` of the centre. */
  readonly centre: Vec3;
  readonly reachM: number;
}

export interface Rod {
  readonly id: string;
  readonly shape: 'wood';
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radiusM: number;
}

export type Target = Face | Rod;

export interface PickOptions {
  /** How near to wood counts as a hit, pixels: 8 for a mouse or pen, 22 for a finger. */
  readonly reachPx: number;
  /** Pixels that a metre takes up, so far before the eye. */
  pxPerM(depthM: number): number;
}

function holds(corners: readonly Pixel[], x: number, y: number): boolean {
  let inside = false;
  let [beforeX, beforeY] = corners[corners.length - 1] as Pixel;
  for (const [cornerX, cornerY] of corners) {
    const straddles = cornerY > y !== beforeY > y;
    if (straddles && x < ((beforeX - cornerX) * (y - cornerY)) / (beforeY - cornerY) + cornerX)
      inside = !inside;
    [beforeX, beforeY] = [cornerX, cornerY];
  }
  return inside;
}

/** Depth of a face under the pixel, null when it is not there. */
function depthOnFace(
  face: Face,
  project: Project,
  x: number,
  y: number,
  pxPerM: PickOptions['pxPerM'],
): number | null {
  const centre = project(face.centre);
  if (centre === null) return null;
  const [centreX, centreY, depthM] = centre;
  if (Math.hypot(x - centreX, y - centreY) > 2 * face.reachM * pxPerM(depthM)) return null;
  const pixels: Pixel[] = [];
  for (const corner of face.corners) {
    const pixel = project(corner);
    if (pixel === null) return null;
    pixels.push(pixel);
  }
  return holds(pixels, x, y) ? depthM : null;
}

/** How far a pixel is from the edge of the wood (0 or less on it), and the depth there. */
function nearestOnRod(
  rod: Rod,
  project: Project,
  x: number,
  y: number,
  pxPerM: PickOptions['pxPerM'],
): { px: number; depthM: number } | null {
  const [from, to] = [project(rod.from), project(rod.to)];
  if (from === null || to === null) return null;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((x - from[0]) * dx + (y - from[1]) * dy) / square)) : 0;
  const depthM = from[2] + (to[2] - from[2]) * t;
  return {
    px: Math.hypot(x - from[0] - t * dx, y - from[1] - t * dy) - rod.radiusM * pxPerM(depthM),
    depthM,
  };
}

/** The same projection, which works out each point but once: for many pixels of one picture. */
function remembering(project: Project): Project {
  const known = new Map<Vec3, Pixel | null>();
  return (point) => {
    const before = known.get(point);
    if (before !== undefined) return before;
    const pixel = project(point);
    known.set(point, pixel);
    return pixel;
  };
}

/** `pick` for many pixels of one picture: what is far from a pixel is known at once. */
export function pickerOf(
  targets: readonly Target[],
  project: Project,
  options: PickOptions,
): (x: number, y: number) => Target | null {
  const once = remembering(project);
  const boxes = targets.map((target) => {
    const points = target.shape === 'face' ? target.corners : [target.from, target.to];
    const pixels = points.flatMap((point) => once(point) ?? []);
    const depthM = once(points[0] as Vec3)?.[2] ?? Number.POSITIVE_INFINITY;
    const roomPx =
      target.shape === 'face' ? 0 : options.reachPx + 1.5 * target.radiusM * options.pxPerM(depthM);
    const [xs, ys] = [pixels.filter((_, i) => i % 3 === 0), pixels.filter((_, i) => i % 3 === 1)];
    const [left, top] = [Math.min(...xs) - roomPx, Math.min(...ys) - roomPx];
    return { target, left, top, right: Math.max(...xs) + roomPx, bottom: Math.max(...ys) + roomPx };
  });
  return (x, y) => {
    const there = boxes.filter((box) => x >= box.left && x <= box.right && y >= box.top && y <= box.bottom);
    return pick(
      there.map(({ target }) => target),
      once,
      x,
      y,
      options,
    );
  };
}

/** The targets that a press within `spreadPx` of a pixel could hit. */
export function targetsNear(
  targets: readonly Target[],
  project: Project,
  x: number,
  y: number,
  options: PickOptions,
  spreadPx: number,
): readonly Target[] {
  return targets.filter((target) => {
    if (target.shape === 'wood') {
      const found = nearestOnRod(target, project, x, y, options.pxPerM);
      return found !== null && found.px <= options.reachPx + spreadPx;
    }
    const centre = project(target.centre);
    if (centre === null) return false;
    return (
      Math.hypot(x - centre[0], y - centre[1]) <= 1.5 * target.reachM * options.pxPerM(centre[2]) + spreadPx
    );
  });
}

/**
 * What lies at a pixel: of all that is hit squarely the nearest to the eye; else the wood nearest in the picture
 * within reach; else null.
 */
export function pick(
  targets: readonly Target[],
  project: Project,
  x: number,
  y: number,
  options: PickOptions,
): Target | null {
  let square: { target: Target; depthM: number } | null = null;
  let near: { target: Target; px: number } | null = null;
  for (const target of targets) {
    let depthM: number | null;
    if (target.shape === 'face') {
      depthM = depthOnFace(target, project, x, y, options.pxPerM);
    } else {
      const found = nearestOnRod(target, project, x, y, options.pxPerM);
      depthM = found !== null && found.px <= 0 ? found.depthM : null;
      if (found !== null && found.px > 0 && found.px < (near?.px ?? options.reachPx))
        near = { target, px: found.px };
    }
    if (depthM !== null && depthM < (square?.depthM ?? Number.POSITIVE_INFINITY)) square = { target, depthM };
  }
  return (square ?? near)?.target ?? null;
}
