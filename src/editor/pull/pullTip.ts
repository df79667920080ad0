/**
 * A branch taken by its tip. It turns and stretches in the plane of the picture, and what grows on it turns with it; nothing changes its
 * depth. Where the grower has locked a figure, the hand's point is brought to the nearest place that keeps it.
 */
import type { TreeFile } from '../../document/treeFile.ts';
import { pathLengthM } from '../../geometry/path.ts';
import { withDescendants } from '../../geometry/tree.ts';
import {
  add,
  angleBetweenDeg,
  anyPerpendicular,
  cross,
  dot,
  length,
  normalize,
  rotate,
  scale,
  sub,
  type Vec3,
} from '../../geometry/vec.ts';
import { bearingDeg, direction, fromUprightDeg, rad } from '../../geometry/world.ts';
import { type Edited, refuse, type TreeAxis, withAxes } from '../edit.ts';
import { reshape, type Shape } from '../edits/reshape.ts';
import { branchFigures, chord } from '../figures.ts';
import { limits, outside } from '../limits.ts';
import { turnWood } from '../turnWood.ts';
import type { Held } from './held.ts';
import { changed, flat, fromTo, spanOf } from './inPlane.ts';
import { stretched } from './rewood.ts';
import { grazingDeg, pointOnPlane, type Sight } from './sight.ts';

/** A branch that points at the eye is not turned by what little of it is seen across: our choice, as a share of its length. */
const leastAcross = 0.2;
/** A branch with a locked side is never set quite upright, where it would have none, degrees. */
const leastLeanDeg = 0.1;

/** @param base of the branch, in the frame of the sketch, as is `sight` */
export function pullTip(file: TreeFile, axis: TreeAxis, base: Vec3, sight: Sight, held: Held): Edited {
  const old = chord(axis);
  const met = pointOnPlane(sight, add(base, old), sight.facing);
  if (held.has('side') || held.has('upright')) return keeping(file, axis, base, sight, held, met);
  if (met === null) return refuse('The picture is too flat here. Turn it a little.');
  const wanted = sub(met, base);
  const span = spanOf(sight.facing);
  const before = flat(span, old);
  const isSeen = Math.hypot(...before) >= leastAcross * length(old);
  if (!isSeen) return held.has('length') ? tilted(file, axis, span, wanted) : leant(file, axis, wanted);
  const change = fromTo(before, flat(span, wanted));
  return turned(file, axis, span, held.has('length') ? { ...change, stretch: 1 } : change);
}

function turned(
  file: TreeFile,
  axis: TreeAxis,
  span: readonly [Vec3, Vec3],
  change: ReturnType<typeof fromTo>,
): Edited {
  const start = axis.path[0] as Vec3;
  const path = axis.path.map((point) => add(start, changed(sub(point, start), span, change)));
  const rigid = { ...change, stretch: 1 };
  return finished(file, axis, path, (v) => changed(v, span, rigid));
}

/** Shifted more and more towards the tip: of a branch that points at the eye. */
function leant(file: TreeFile, axis: TreeAxis, wanted: Vec3): Edited {
  const old = chord(axis);
  const shift = sub(wanted, old);
  const start = axis.path[0] as Vec3;
  const square = dot(old, old);
  const path = axis.path.map((point) => add(point, scale(shift, dot(sub(point, start), old) / square)));
  return finished(file, axis, path, turnFromTo(old, wanted));
}

/** Turned as a whole, its tip as near to the point as its length lets it: of a branch that points at the eye. */
function tilted(file: TreeFile, axis: TreeAxis, span: readonly [Vec3, Vec3], wanted: Vec3): Edited {
  const old = chord(axis);
  const [x, y] = flat(span, wanted);
  const reachM = length(old);
  const share = Math.min(1, reachM / Math.max(1e-9, Math.hypot(x, y)));
  const across = add(scale(span[0], x * share), scale(span[1], y * share));
  const facing = cross(span[0], span[1]);
  const deepM = Math.sqrt(Math.max(0, reachM ** 2 - dot(across, across))) * (dot(old, facing) < 0 ? -1 : 1);
  const turn = turnFromTo(old, add(across, scale(facing, deepM)));
  return finished(file, axis, axis.path.map(turn), turn);
}

/** The shortest turn from one direction to another. */
function turnFromTo(from: Vec3, to: Vec3): (v: Vec3) => Vec3 {
  const square = cross(from, to);
  const hinge = length(square) > 1e-12 ? normalize(square) : anyPerpendicular(normalize(from));
  const angle = rad(angleBetweenDeg(from, to));
  return (v) => rotate(v, hinge, angle);
}

/** The branch on its new course, and what grows on it turned with it. */
function finished(file: TreeFile, axis: TreeAxis, path: readonly Vec3[], turn: (v: Vec3) => Vec3): Edited {
  const complaint = outside('lengthM', pathLengthM(path));
  if (complaint !== null) return refuse(complaint);
  const going = new Set(withDescendants({ axes: file.axes }, axis.id));
  const onIt = file.axes.filter((one) => going.has(one.id)).map((one) => turnWood(one, turn));
  const withTurned = withAxes(file, onIt);
  const own = onIt.find((one) => one.id === axis.id) as TreeAxis;
  return { ok: true, file: stretched(withTurned, own, path), said: `Reshaped ${axis.name}` };
}

/** With side or angle locked the new figures are found first, and the branch is brought to them. */
function keeping(
  file: TreeFile,
  axis: TreeAxis,
  base: Vec3,
  sight: Sight,
  held: Held,
  met: Vec3 | null,
): Edited {
  const now = branchFigures(axis);
  const upright = pointOnPlane(sight, base, direction(now.bearingDeg + 90, 0));
  const point = (held.has('side') ? upright : null) ?? met;
  if (point === null) return refuse('The picture is too flat here. Turn it a little.');
  const wanted = sub(point, base);
  const way = keptWay(wanted, now, held);
  const perChord = now.lengthM / length(chord(axis));
  const lengthM = Math.min(
    limits.lengthM.max,
    Math.max(limits.lengthM.min, perChord * alongWay(sight, base, way, wanted, held)),
  );
  const shape: Shape = {
    ...(held.has('side') ? {} : { bearingDeg: bearingDeg(way) }),
    ...(held.has('upright') ? {} : { fromUprightDeg: fromUprightDeg(way) }),
    ...(held.has('length') ? {} : { lengthM }),
  };
  return reshape(file, axis.id, shape);
}

/** The way the branch will point: that of the hand's point, but for what is locked. */
function keptWay(wanted: Vec3, now: ReturnType<typeof branchFigures>, held: Held): Vec3 {
  const outward = direction(now.bearingDeg, 0);
  const side = held.has('side') ? now.bearingDeg : bearingDeg(wanted);
  if (held.has('upright')) return direction(side, 90 - now.fromUprightDeg);
  const levelM = Math.max(0, dot(wanted, outward));
  const lean = Math.max(leastLeanDeg, fromUprightDeg([levelM, wanted[1], 0]));
  return direction(side, 90 - Math.min(180 - leastLeanDeg, lean));
}

/** How far the tip goes that way, metres in a straight line. */
function alongWay(sight: Sight, base: Vec3, way: Vec3, wanted: Vec3, held: Held): number {
  const sideways = angleBetweenDeg(way, sight.way);
  const isClear = sideways > grazingDeg && sideways < 180 - grazingDeg;
  if (!(held.has('side') && held.has('upright') && isClear)) return dot(wanted, way);
  // Where the line of the branch and the line of sight come nearest to each other.
  const between = sub(base, sight.from);
  const cosine = dot(way, sight.way);
  return (cosine * dot(sight.way, between) - dot(way, between)) / (1 - cosine ** 2);
}
