/** How near two branches come, away from the fork they share. */
import { closestApproach } from '../../geometry/distance.ts';
import { type Path, pointAt } from '../../geometry/path.ts';
import { type PlacedAxis, radiusAtM } from '../../geometry/tree.ts';

/** This much wood on either way from the shared fork is left out: branches are always close there; our choice. */
const leftOutNearForkM = 0.15;
/** Paths are walked in pieces of this length, metres; the stretch that is too near is found to this much. */
const pieceM = 0.01;

export interface Nearness {
  /** Least distance between the centre lines, metres. */
  readonly gapM: number;
  /** Length of the first branch that lies nearer than its limit, metres. */
  readonly overM: number;
  /** The limit at the nearest place, metres between centre lines. */
  readonly limitM: number;
  /** Where they are nearest, along the first and the second, metres. */
  readonly alongFirstM: number;
  readonly alongSecondM: number;
}

/**
 * Null when the two never come nearer than `max(gapLimitM, both radii + clearanceM)` between centre lines,
 * wood near the shared fork left out, and so is all of the first from there to where the two have parted for the first
 * time: that is a narrow fork, not a crossing. The first must not be wood that the second grew from.
 */
export function nearness(
  first: PlacedAxis,
  second: PlacedAxis,
  gapLimitM: number,
  clearanceM: number,
): Nearness | null {
  if (
    apartM(first.path, second.path) > Math.max(gapLimitM, thickestM(first) + thickestM(second) + clearanceM)
  )
    return null;
  const meeting = sharedFork(first, second);
  const [piecesOfFirst, piecesOfSecond] = [pieces(first, meeting.first), pieces(second, meeting.second)];
  let nearest: Nearness | null = null;
  let [overM, hasParted] = [0, false];
  for (const a of piecesOfFirst) {
    let tooNear = false;
    for (const b of piecesOfSecond) {
      const { distanceM } = closestApproach(a.path, b.path);
      const limitM = Math.max(gapLimitM, radiusAtM(first, a.atM) + radiusAtM(second, b.atM) + clearanceM);
      if (distanceM >= limitM) continue;
      tooNear = true;
      if (!hasParted) break;
      if (nearest === null || distanceM < nearest.gapM) {
        nearest = { gapM: distanceM, overM: 0, limitM, alongFirstM: a.atM, alongSecondM: b.atM };
      }
    }
    if (tooNear && hasParted) overM += a.lengthM;
    hasParted ||= !tooNear;
  }
  return nearest === null ? null : { ...nearest, overM };
}

const thickestM = (axis: PlacedAxis): number => axis.axis.baseDiameterM / 2;

/** Least distance between the boxes that hold two paths, metres; never more than the true distance. */
function apartM(first: Path, second: Path): number {
  const gaps = ([0, 1, 2] as const).map((k) => {
    const [a, b] = [first.map((p) => p[k]), second.map((p) => p[k])];
    return Math.max(0, Math.min(...a) - Math.max(...b), Math.min(...b) - Math.max(...a));
  });
  return Math.hypot(...gaps);
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
  readonly atM: number;
  readonly lengthM: number;
}

/** The branch in pieces, those near the fork left out. */
function pieces(axis: PlacedAxis, forkAtM: number): Piece[] {
  const count = Math.max(1, Math.ceil(axis.lengthM / pieceM));
  const lengthM = axis.lengthM / count;
  const found: Piece[] = [];
  for (let i = 0; i < count; i++) {
    const atM = (i + 0.5) * lengthM;
    if (Math.abs(atM - forkAtM) < leftOutNearForkM) continue;
    found.push({
      path: [pointAt(axis.path, i * lengthM), pointAt(axis.path, (i + 1) * lengthM)],
      atM,
      lengthM,
    });
  }
  return found;
}
