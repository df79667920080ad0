/** Whether the wood can stand: lengths, places along parents, thickness, room. Axes come parents first. */
import { pathLengthM } from '../../geometry/path.ts';
import { type PlacedAxis, placeTree, radiusAtM } from '../../geometry/tree.ts';
import { length, origin, type Vec3 } from '../../geometry/vec.ts';
import { type FileAxis, type Finding, inM, inMm } from './finding.ts';

/** Lengths are written to 0.1 mm a coordinate, so places along a crooked branch may run over by a little. */
export const alongToleranceM = 0.005;
/** Small fruit trees; beyond it the units are wrong. */
const reachM = 12;
/** Roots and stems from the soil begin a little below it. */
const depthM = 1;
/** How far from the centre line of its parent an axis may begin: bark, burr, or soil around a stump. */
const offsetM = 0.6;
const shortestM = 0.001;
const thinnestStepM = 1e-4;
/** A branch may be somewhat thicker than the taper says of its parent, after years of cuts; not twice as thick. */
const overParent = 1.5;
const overParentM = 0.005;

type Indexed = readonly [axis: FileAxis, index: number];

function findBadPath([axis, i]: Indexed): Finding | null {
  const place = ['axes', i, 'path'];
  const lengthM = pathLengthM(axis.path);
  if (axis.path.length < 2 || lengthM < shortestM) {
    return {
      place,
      reason: 'The branch has no length. Give its path two points that lie apart, or take the branch out.',
    };
  }
  const [x, y, z] = axis.path[0] as Vec3;
  const startM = length([x, y, z]);
  if (startM > offsetM) {
    return {
      place: [...place, 0],
      reason: `The branch begins ${inM(startM)} away from where it leaves its parent; at most ${inM(offsetM)} is possible. Path points are offsets from that place, in metres.`,
    };
  }
  return null;
}

function findBadThickness([axis, i]: Indexed, parent: PlacedAxis | null): Finding | null {
  if (axis.tipDiameterM > axis.baseDiameterM + thinnestStepM) {
    return {
      place: ['axes', i, 'tipDiameterM'],
      reason: `The tip is thicker (${inMm(axis.tipDiameterM)}) than the base (${inMm(axis.baseDiameterM)}). Perhaps the two were exchanged.`,
    };
  }
  if (parent === null) return null;
  const mostM = overParent * 2 * radiusAtM(parent, axis.atM) + overParentM;
  if (axis.baseDiameterM <= mostM) return null;
  return {
    place: ['axes', i, 'baseDiameterM'],
    reason: `The branch is far thicker (${inMm(axis.baseDiameterM)}) than the wood it grows from there (${inMm(2 * radiusAtM(parent, axis.atM))}). Thickness is the diameter in metres.`,
  };
}

function findBadPlace([axis, i]: Indexed, placed: PlacedAxis): Finding | null {
  const { parent } = placed;
  if (parent === null && axis.atM !== 0) {
    return {
      place: ['axes', i, 'atM'],
      reason: `The trunk grows from nothing, so its atM must be 0, got ${axis.atM}.`,
    };
  }
  if (parent !== null && axis.atM > parent.lengthM + alongToleranceM) {
    return {
      place: ['axes', i, 'atM'],
      reason: `It leaves its parent ${inM(axis.atM)} along, but the parent is only ${inM(parent.lengthM)} long. Measure from the parent's base, along the wood.`,
    };
  }
  const j = axis.buds.findIndex((bud) => bud.atM > placed.lengthM + alongToleranceM);
  if (j < 0) return null;
  return {
    place: ['axes', i, 'buds', j, 'atM'],
    reason: `The bud sits ${inM(axis.buds[j]?.atM ?? 0)} along, but the branch is only ${inM(placed.lengthM)} long. Measure from the base of the branch.`,
  };
}

function findOutOfReach([, i]: Indexed, placed: PlacedAxis): Finding | null {
  const n = placed.path.findIndex((point) => length(point) > reachM || point[1] < -depthM);
  if (n < 0) return null;
  const point = placed.path[n] as Vec3;
  const what =
    point[1] < -depthM
      ? `lies ${inM(-point[1])} below the soil`
      : `lies ${inM(length(point))} from the foot of the trunk; at most ${reachM} m is meant`;
  return {
    place: ['axes', i, 'path', n],
    reason: `This point ${what}. Lengths are metres: perhaps they were entered as centimetres.`,
  };
}

/** The first thing wrong with the wood. `order` has the indices of the axes, parents first. */
export function findImpossibleWood(axes: readonly FileAxis[], order: readonly number[]): Finding | null {
  const indexed = order.map((i): Indexed => [axes[i] as FileAxis, i]);
  for (const one of indexed) {
    const bad = findBadPath(one);
    if (bad) return bad;
  }
  const placed = placeTree({ axes: indexed.map(([axis]) => axis) }, { foot: origin, turnedDeg: 0 });
  for (const one of indexed) {
    const here = placed.get(one[0].id) as PlacedAxis;
    const bad = findBadPlace(one, here) ?? findOutOfReach(one, here) ?? findBadThickness(one, here.parent);
    if (bad) return bad;
  }
  return null;
}

/** The axes parents first, places that run over an end by less than the tolerance set to that end. */
export function settleWood(axes: readonly FileAxis[], order: readonly number[]): FileAxis[] {
  const lengths = new Map(axes.map((axis) => [axis.id, pathLengthM(axis.path)]));
  return order.map((i) => {
    const axis = axes[i] as FileAxis;
    const parentLengthM = axis.parentId === null ? 0 : (lengths.get(axis.parentId) as number);
    const lengthM = lengths.get(axis.id) as number;
    const buds = axis.buds.map((bud) => (bud.atM > lengthM ? { ...bud, atM: lengthM } : bud));
    return { ...axis, atM: Math.min(axis.atM, parentLengthM), buds };
  });
}
