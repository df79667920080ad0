/** Where the tip of a stroke may settle: on wood, upright, level, or on a bearing of 15 degrees. */
import type { TreeFile } from '../../document/treeFile.ts';
import { stanceOf } from '../../document/views.ts';
import { type PlacedAxis, placeTree } from '../../geometry/tree.ts';
import {
  add,
  angleBetweenDeg,
  cross,
  dot,
  length,
  normalize,
  scale,
  sub,
  up,
  type Vec3,
} from '../../geometry/vec.ts';
import { direction, wind } from '../../geometry/world.ts';
import { apartPx, type Look, seenAt, type Xy } from './look.ts';
import { keptWithin, onPlane, type WorkPlane } from './workPlane.ts';

export interface Snap {
  readonly kind: 'branch' | 'upright' | 'level' | 'bearing';
  /** Beside the pointer: "level", "meets West limb". */
  readonly words: string;
  /** The tip, in the world. */
  readonly tip: Vec3;
}

interface SnapLine {
  readonly kind: 'upright' | 'level' | 'bearing';
  readonly words: string;
  /** Unit vector within the plane. */
  readonly way: Vec3;
}

/** A tip farther off than this is not turned, whatever its pixels say: short strokes keep their freedom, degrees. Our choice. */
const farthestTurnDeg = 4;
const bearingStepDeg = 15;
/** Below this lean of the plane its directions have no bearings to choose from: sine of 15 degrees. Our choice. */
const leastLean = Math.sin((15 * Math.PI) / 180);

/** Plus nought for minus nought. */
const tidy = ([x, y, z]: Vec3): Vec3 => [x + 0, y + 0, z + 0];

/** The directions that a straight stroke in the plane settles on. */
export function snapLines(facing: Vec3): readonly SnapLine[] {
  const lines: SnapLine[] = [];
  const levelM = Math.hypot(facing[0], facing[2]);
  if (Math.abs(facing[1]) < 1e-9) {
    lines.push({ kind: 'upright', words: 'upright', way: up });
    lines.push({ kind: 'upright', words: 'straight down', way: [0, -1, 0] });
  }
  if (levelM > 1e-9) {
    const along: Vec3 = [facing[2] / levelM, 0, -facing[0] / levelM];
    for (const side of [1, -1]) lines.push({ kind: 'level', words: 'level', way: tidy(scale(along, side)) });
  }
  if (Math.abs(facing[1]) < leastLean) return lines;
  for (let bearing = 0; bearing < 360; bearing += bearingStepDeg) {
    const ahead = direction(bearing, 0);
    const way = normalize(cross(facing, cross(ahead, up)));
    lines.push({
      kind: 'bearing',
      words: bearing % 45 === 0 ? `due ${wind(bearing)}` : `bearing ${bearing}°`,
      way: dot(way, ahead) < 0 ? scale(way, -1) : way,
    });
  }
  return lines;
}

/** The line nearest to the tip in the picture, within reach; where two are as near, the one named first. */
function snapToLine(plane: WorkPlane, look: Look, tip: Vec3, reachPx: number): Snap | null {
  const drawn = sub(tip, plane.through);
  if (length(drawn) === 0) return null;
  const at = seenAt(look, tip);
  let [best, leastPx]: [Snap | null, number] = [null, reachPx];
  for (const { kind, words, way } of snapLines(plane.facing)) {
    if (angleBetweenDeg(drawn, way) > farthestTurnDeg) continue;
    const settled = keptWithin(plane.room, plane.through, add(plane.through, scale(way, dot(drawn, way))));
    const awayPx = apartPx(at, seenAt(look, settled));
    if (awayPx < leastPx) [best, leastPx] = [{ kind, words, tip: settled }, awayPx];
  }
  return best;
}

/** The place on wood that is seen nearest to a pixel. */
function nearestSeen({ path }: PlacedAxis, look: Look, [x, y]: Xy): { at: Xy; px: number } | null {
  let best: { at: Xy; px: number } | null = null;
  let before: Xy | null = null;
  for (const point of path) {
    const pixel = look.project(point);
    const here: Xy | null = pixel === null ? null : [pixel[0], pixel[1]];
    if (before !== null && here !== null) {
      const [dx, dy] = [here[0] - before[0], here[1] - before[1]];
      const square = dx * dx + dy * dy;
      const t =
        square > 0 ? Math.min(1, Math.max(0, ((x - before[0]) * dx + (y - before[1]) * dy) / square)) : 0;
      const at: Xy = [before[0] + t * dx, before[1] + t * dy];
      const px = apartPx(at, [x, y]);
      if (px < (best?.px ?? Number.POSITIVE_INFINITY)) best = { at, px };
    }
    before = here;
  }
  return best;
}

/** The tip comes to lie over the wood in this picture; its depth stays that of the plane. */
function snapToBranch(
  file: TreeFile,
  but: string,
  plane: WorkPlane,
  look: Look,
  xy: Xy,
  reachPx: number,
): Snap | null {
  let nearest: { name: string; at: Xy; px: number } | null = null;
  for (const placed of placeTree({ axes: file.axes }, stanceOf(file)).values()) {
    if (placed.axis.id === but) continue;
    const found = nearestSeen(placed, look, xy);
    if (found !== null && found.px < (nearest?.px ?? reachPx)) nearest = { ...found, name: placed.axis.name };
  }
  if (nearest === null) return null;
  const tip = onPlane(plane, look, ...nearest.at);
  return tip === null ? null : { kind: 'branch', words: `meets ${nearest.name}`, tip };
}

export interface SnapAsk {
  /** The tree without what is drawn. */
  readonly file: TreeFile;
  /** The branch drawn from, or drawn again: it is not met. */
  readonly but: string;
  readonly plane: WorkPlane;
  readonly look: Look;
  readonly tip: Vec3;
  /** 24 for a finger, 8 for a mouse or pen. */
  readonly reachPx: number;
  readonly isStraight: boolean;
}

/** What the tip settles on, or null. Wood comes before directions, and only a straight stroke has one. */
export function snapTip({ file, but, plane, look, tip, reachPx, isStraight }: SnapAsk): Snap | null {
  const meets = snapToBranch(file, but, plane, look, seenAt(look, tip), reachPx);
  if (meets !== null || !isStraight) return meets;
  return snapToLine(plane, look, tip, reachPx);
}
