/** A stroke of pixels made the course of a branch: few points, in the plane it is drawn in. */
import type { TreeFile } from '../../document/treeFile.ts';
import type { Path } from '../../geometry/path.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import { apartPx, type Look, seenAt, type Xy } from './look.ts';
import { fromStretch, simplifiedTo } from './simplify.ts';
import { type Snap, snapTip } from './snap.ts';
import { onPlane, type WorkPlane } from './workPlane.ts';

export interface Course {
  /** In the world, from the point of the plane that it starts from. */
  readonly path: Path;
  readonly snap: Snap | null;
}

export interface CourseAsk {
  /** The tree without what is drawn. */
  readonly file: TreeFile;
  /** The branch drawn from, or drawn again. */
  readonly but: string;
  readonly plane: WorkPlane;
  readonly look: Look;
  /** Null: nothing is snapped to. */
  readonly snapPx: number | null;
}

/** A stroke that comes back so near to where it began is taken back, pixels. Our choice. */
const takenBackPx = 12;
/** A stroke that keeps so near to the straight line is straight: pixels, and a share of its length. Our choice. */
const [straightPx, straightShare] = [4, 0.025];
/** How near the course keeps to a bent stroke: pixels, and a share of its length. Our choice. */
const [fitPx, fitShare] = [1.2, 0.003];
/** Our choice: enough for two bows and a hook. */
export const mostPoints = 14;

/** The stroke moved so that it starts from a given pixel and ends where it did; straight strokes stay straight. */
export function startedAt(stroke: readonly Xy[], start: Xy): readonly Xy[] {
  const first = stroke[0] as Xy;
  const [offX, offY] = [start[0] - first[0], start[1] - first[1]];
  const wholePx = lengthPx(stroke);
  let donePx = 0;
  return stroke.map(([x, y], i): Xy => {
    if (i > 0) donePx += apartPx(stroke[i - 1] as Xy, [x, y]);
    const left = wholePx === 0 ? 1 : 1 - donePx / wholePx;
    return [x + offX * left, y + offY * left];
  });
}

export function lengthPx(stroke: readonly Xy[]): number {
  let sum = 0;
  for (let i = 1; i < stroke.length; i++) sum += apartPx(stroke[i - 1] as Xy, stroke[i] as Xy);
  return sum;
}

export function isStraight(stroke: readonly Xy[]): boolean {
  const [first, last] = [stroke[0] as Xy, stroke[stroke.length - 1] as Xy];
  const allowedPx = Math.max(straightPx, straightShare * apartPx(first, last));
  return stroke.every((point) => fromStretch(point, first, last) <= allowedPx);
}

/** Null while the stroke is too short to be a branch, or where the plane cannot be drawn on. */
export function courseOf(stroke: readonly Xy[], ask: CourseAsk): Course | null {
  const { plane, look } = ask;
  if (stroke.length < 2) return null;
  const placed = startedAt(stroke, seenAt(look, plane.through));
  const last = placed[placed.length - 1] as Xy;
  if (apartPx(placed[0] as Xy, last) < takenBackPx) return null;
  const straight = isStraight(placed);
  const tip = onPlane(plane, look, ...last);
  if (tip === null) return null;
  const snap =
    ask.snapPx === null ? null : snapTip({ ...ask, tip, reachPx: ask.snapPx, isStraight: straight });
  const end = snap?.tip ?? tip;
  if (straight) return { path: [plane.through, end], snap };
  const kept = simplifiedTo(placed, Math.max(fitPx, fitShare * lengthPx(placed)), mostPoints);
  const inner: Vec3[] = [];
  for (const i of kept.slice(1, -1)) {
    const point = onPlane(plane, look, ...(placed[i] as Xy));
    if (point !== null) inner.push(point);
  }
  return { path: [plane.through, ...inner, end], snap };
}
