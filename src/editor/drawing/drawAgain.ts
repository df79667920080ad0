/**
 * A branch drawn over in another view. What this view shows comes from the stroke; how deep each place lies stays as it was. So a limb
 * drawn from the front and then from the side has its course in all three directions.
 */
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf } from '../../document/views.ts';
import { type Path, pathLengthM, pointAt } from '../../geometry/path.ts';
import { type PlacedAxis, placeTree } from '../../geometry/tree.ts';
import { add, distance, dot, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { axisOf, type Edited, refuse, type TreeAxis, withAxes } from '../edit.ts';
import { outside } from '../limits.ts';
import { spanOf } from '../pull/inPlane.ts';
import { asPath } from '../pull/rewood.ts';
import { type CourseAsk, mostPoints, startedAt } from './course.ts';
import { checked, offsetsFrom } from './drawBranch.ts';
import { apartPx, type Look, seenAt, type Xy } from './look.ts';
import { matchPlaces } from './match.ts';
import { simplifiedTo } from './simplify.ts';
import { onPlane, type WorkPlane } from './workPlane.ts';

const samples = 160;
/** How near the course keeps to what was drawn, as a share of its length. Our choice. */
const fitShare = 0.0025;

export interface Again {
  readonly edited: Edited;
  /** The course, in the world. */
  readonly path: Path;
}

/** Even shares of the length of a stroke. */
function evenly(stroke: readonly Xy[], count: number): readonly Xy[] {
  const path = stroke.map(([x, y]): Vec3 => [x, y, 0]);
  const wholePx = pathLengthM(path);
  return Array.from({ length: count }, (_, i): Xy => {
    const [x, y] = pointAt(path, (wholePx * i) / (count - 1));
    return [x, y];
  });
}

/** The direction, within the plane, in which the branch is seen to spread most: what both drawings tell of. */
export function spreadWay(path: Path, facing: Vec3): Vec3 {
  const [first, second] = spanOf(facing);
  const middle = scale(path.reduce(add), 1 / path.length);
  let [aa, ab, bb] = [0, 0, 0];
  for (const point of path) {
    const off = sub(point, middle);
    const [a, b] = [dot(first, off), dot(second, off)];
    aa += a * a;
    ab += a * b;
    bb += b * b;
  }
  const turn = 0.5 * Math.atan2(2 * ab, aa - bb);
  return add(scale(first, Math.cos(turn)), scale(second, Math.sin(turn)));
}

/** A stroke may run from base to tip or from tip to base. */
function fromBase(stroke: readonly Xy[], look: Look, path: Path): readonly Xy[] {
  const [base, tip] = [seenAt(look, path[0] as Vec3), seenAt(look, path[path.length - 1] as Vec3)];
  const [first, last] = [stroke[0] as Xy, stroke[stroke.length - 1] as Xy];
  const asDrawn = apartPx(first, base) + apartPx(last, tip);
  const turned = apartPx(last, base) + apartPx(first, tip);
  const isTurned = turned < asDrawn && apartPx(last, base) < apartPx(first, base);
  return isTurned ? stroke.toReversed() : stroke;
}

/** The branch in the world, or an error. */
function placedIn(file: TreeFile, id: string): PlacedAxis {
  const placed = placeTree({ axes: file.axes }, stanceOf(file)).get(id);
  if (placed === undefined) throw new Error(`drawAgain: no branch with id ${id}`);
  return placed;
}

export const baseOf = (file: TreeFile, id: string): Vec3 => placedIn(file, id).path[0] as Vec3;

/** Null while the stroke is too short, or where the plane cannot be drawn on. */
export function drawAgain(ask: CourseAsk, stroke: readonly Xy[]): Again | null {
  const { file, but: id, plane, look } = ask;
  if (stroke.length < 2) return null;
  const { path: before, lengthM } = placedIn(file, id);
  const drawn = evenly(startedAt(fromBase(stroke, look, before), seenAt(look, plane.through)), samples);
  const seen: Vec3[] = [];
  for (const xy of drawn) {
    const point = onPlane(plane, look, ...xy);
    if (point === null) return null;
    seen.push(point);
  }
  const old = seen.map((_, i) => pointAt(before, (lengthM * i) / (samples - 1)));
  const way = spreadWay(old, plane.facing);
  const matched = matchPlaces(
    old.map((point) => dot(way, point)),
    seen.map((point) => dot(way, point)),
  );
  const alongM = matched.map((place) => (lengthM * place) / (samples - 1));
  const deep = drawn.map((xy, i) => withDepthOf(pointAt(before, alongM[i] as number), plane, look, xy));
  if (deep.includes(null)) return null;
  const whole = deep as readonly Vec3[];
  const kept = simplifiedTo(whole, fitShare * pathLengthM(whole), mostPoints);
  const path = kept.map((i) => whole[i] as Vec3);
  const places = kept.map((i) => alongM[i] as number);
  return { edited: onNewCourse(file, id, path, places), path };
}

/** The point seen at a pixel that lies as deep as a point of the branch. */
const withDepthOf = (point: Vec3, plane: WorkPlane, look: Look, [x, y]: Xy): Vec3 | null =>
  onPlane({ ...plane, through: point }, look, x, y);

/** What sits on the branch stays at the place that it was matched with. */
function onNewCourse(file: TreeFile, id: string, path: Path, places: readonly number[]): Edited {
  const axis = axisOf(file, id);
  const complaint = outside('lengthM', pathLengthM(path));
  if (complaint !== null) return refuse(complaint);
  const moved = (atM: number): number => placeAfter(path, places, atM);
  const start = axis.path[0] as Vec3;
  const course = offsetsFrom(file, path[0] as Vec3, path).map((offset) => add(start, offset));
  const wood: TreeAxis = {
    ...axis,
    path: asPath(course),
    buds: axis.buds.map((bud) => ({ ...bud, atM: moved(bud.atM) })),
  };
  const onIt = file.axes.filter((one) => one.parentId === id);
  const next = withAxes(file, [wood, ...onIt.map((one) => ({ ...one, atM: moved(one.atM) }))]);
  return checked({ ok: true, file: next, said: `Drew ${axis.name} again` });
}

/** @param places on the old course, one for each point of the new */
function placeAfter(path: Path, places: readonly number[], atM: number): number {
  let newM = 0;
  for (let i = 1; i < path.length; i++) {
    const stepM = distance(path[i - 1] as Vec3, path[i] as Vec3);
    const [from, to] = [places[i - 1] as number, places[i] as number];
    if (atM <= to && to > from) return newM + stepM * Math.max(0, (atM - from) / (to - from));
    newM += stepM;
  }
  return newM;
}
