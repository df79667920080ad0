/** How near two branches come, bark to bark, away from the fork they share. */
import { closestApproach } from '../../geometry/distance.ts';
import { type Path, pointAt } from '../../geometry/path.ts';
import { type PlacedAxis, radiusAtM } from '../../geometry/tree.ts';
import { distance, lerp, type Vec3 } from '../../geometry/vec.ts';

/** Paths are walked in pieces of this length, metres; the stretch that is too near is found to this much. */
const pieceM = 0.01;

export interface Nearness {
  /** Least distance between the barks, metres; 0 where they touch, or where the sketch lets one run into the other. */
  readonly barkGapM: number;
  /** Distance between the centre lines there, metres. */
  readonly gapM: number;
  /** Length of the first branch that lies nearer than its limit, metres. */
  readonly overM: number;
  /** The limit at the nearest place, metres between centre lines and between barks. */
  readonly limitM: number;
  readonly barkLimitM: number;
  /** Where they are nearest, along the first and the second, metres. */
  readonly alongFirstM: number;
  readonly alongSecondM: number;
}

/**
 * Branches are round and taper evenly. Radii are taken where the centre lines of two pieces are nearest, which on wood that tapers by
 * 3 cm a metre is within 0.2 mm of the true distance of the barks.
 * Null when the two never come nearer than `max(gapLimitM, both radii + clearanceM)` between centre lines,
 * wood within `leftOutM` of the shared fork left out, and so is all of the first from there to where the two have parted for the first
 * time: that is a narrow fork, not a crossing. The first must not be wood that the second grew from.
 */
export function nearness(
  first: PlacedAxis,
  second: PlacedAxis,
  gapLimitM: number,
  clearanceM: number,
  leftOutM: number,
): Nearness | null {
  const mostM = Math.max(gapLimitM, thickestM(first) + thickestM(second) + clearanceM);
  if (apartM(boxOf(first.path), boxOf(second.path)) > mostM) return null;
  const meeting = sharedFork(first, second);
  const [piecesOfFirst, piecesOfSecond] = [
    pieces(first, meeting.first, leftOutM),
    pieces(second, meeting.second, leftOutM),
  ];
  let nearest: Nearness | null = null;
  let [overM, hasParted] = [0, false];
  const box = boxOf(second.path);
  for (const a of piecesOfFirst) {
    let tooNear = false;
    const canMeet = apartM(boxOf(a.path), box) <= mostM;
    for (const b of canMeet ? piecesOfSecond : []) {
      if (distance(a.middle, b.middle) - (a.lengthM + b.lengthM) / 2 > mostM) continue;
      const place = nearestPlace(first, second, a, b);
      const limitM = Math.max(gapLimitM, place.radiiM + clearanceM);
      if (place.gapM >= limitM) continue;
      tooNear = true;
      if (!hasParted) break;
      if (nearest === null || place.barkGapM < nearest.barkGapM) {
        nearest = { ...place, overM: 0, limitM, barkLimitM: Math.max(gapLimitM - place.radiiM, clearanceM) };
      }
    }
    if (tooNear && hasParted) overM += a.lengthM;
    hasParted ||= !tooNear;
  }
  return nearest === null ? null : { ...nearest, barkGapM: Math.max(0, nearest.barkGapM), overM };
}

/** Where two pieces are nearest: what lies between their centre lines, how much of that is wood, and how much is not. */
function nearestPlace(first: PlacedAxis, second: PlacedAxis, a: Piece, b: Piece) {
  const { distanceM: gapM, alongFirstM, alongSecondM } = closestApproach(a.path, b.path);
  const along = {
    alongFirstM: a.atM - a.lengthM / 2 + alongFirstM,
    alongSecondM: b.atM - b.lengthM / 2 + alongSecondM,
  };
  const radiiM = radiusAtM(first, along.alongFirstM) + radiusAtM(second, along.alongSecondM);
  return { gapM, radiiM, barkGapM: gapM - radiiM, ...along };
}

const thickestM = (axis: PlacedAxis): number => axis.axis.baseDiameterM / 2;

interface Box {
  readonly low: Vec3;
  readonly high: Vec3;
}

function boxOf(path: Path): Box {
  const [low, high]: [[number, number, number], [number, number, number]] = [
    [Infinity, Infinity, Infinity],
    [-Infinity, -Infinity, -Infinity],
  ];
  for (const point of path) {
    for (const k of [0, 1, 2] as const) {
      low[k] = Math.min(low[k], point[k]);
      high[k] = Math.max(high[k], point[k]);
    }
  }
  return { low, high };
}

/** Least distance between two boxes, metres; never more than the true distance of what they hold. */
function apartM(a: Box, b: Box): number {
  const gap = (k: 0 | 1 | 2): number => Math.max(0, a.low[k] - b.high[k], b.low[k] - a.high[k]);
  return Math.hypot(gap(0), gap(1), gap(2));
}

interface Meeting {
  /** Where along this branch the shared fork lies, metres; below 0 when it lies before its base. */
  readonly first: number;
  readonly second: number;
}

/** Walks down to the wood both grew from and tells how far it is along each. */
function sharedFork(first: PlacedAxis, second: PlacedAxis): Meeting {
  const ways = new Map<PlacedAxis, Way>();
  for (const way of wayDown(first)) ways.set(way.axis, way);
  for (const way of wayDown(second)) {
    const other = ways.get(way.axis);
    if (other === undefined) continue;
    if (way.axis === first) return { first: way.atM ?? 0, second: -way.walkedM };
    if (way.axis === second) return { first: -other.walkedM, second: other.atM ?? 0 };
    const between = Math.abs((way.atM ?? 0) - (other.atM ?? 0));
    return { first: -other.walkedM - between / 2, second: -way.walkedM - between / 2 };
  }
  return { first: Number.NEGATIVE_INFINITY, second: Number.NEGATIVE_INFINITY };
}

interface Way {
  readonly axis: PlacedAxis;
  /** Where the way joins this axis; null for the branch it starts from. */
  readonly atM: number | null;
  /** Wood walked from the base of the first branch to there, metres. */
  readonly walkedM: number;
}

function* wayDown(from: PlacedAxis): Generator<Way> {
  let walkedM = 0;
  yield { axis: from, atM: null, walkedM };
  for (let at = from; at.parent !== null; at = at.parent) {
    yield { axis: at.parent, atM: at.axis.atM, walkedM };
    walkedM += at.axis.atM;
  }
}

interface Piece {
  readonly path: Path;
  /** Halfway between its ends. */
  readonly middle: Vec3;
  readonly atM: number;
  readonly lengthM: number;
}

/** The branch in pieces, those near the fork left out. */
function pieces(axis: PlacedAxis, forkAtM: number, leftOutM: number): Piece[] {
  const count = Math.max(1, Math.ceil(axis.lengthM / pieceM));
  const lengthM = axis.lengthM / count;
  const found: Piece[] = [];
  for (let i = 0; i < count; i++) {
    const atM = (i + 0.5) * lengthM;
    if (Math.abs(atM - forkAtM) < leftOutM) continue;
    const [from, to] = [pointAt(axis.path, i * lengthM), pointAt(axis.path, (i + 1) * lengthM)];
    found.push({ path: [from, to], middle: lerp(from, to, 0.5), atM, lengthM });
  }
  return found;
}
