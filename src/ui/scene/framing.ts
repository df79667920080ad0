/** Where the camera stands so that all points are in the picture. */
import { add, cross, dot, length, normalize, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { bearingDeg, direction } from '../../geometry/world.ts';

export interface Framing {
  readonly eye: Vec3;
  readonly target: Vec3;
  /** How large a metre is, where all rays are parallel. */
  readonly pxPerM?: number;
}

/** The eye never comes nearer to a point than this, metres. */
const nearestM = 0.1;

/** The eye's own directions when it looks from `toEye`; near the zenith north is up in the picture. */
export function pictureAxes(toEye: Vec3): { right: Vec3; upward: Vec3 } {
  const steep = Math.hypot(toEye[0], toEye[2]) < 1e-6;
  const right = normalize(cross(steep ? [0, 0, -1] : [0, 1, 0], toEye));
  return { right, upward: cross(toEye, right) };
}

const middle = (values: readonly number[]): number => {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return (low + high) / 2;
};

/**
 * The nearest eye in a direction that sees all points.
 * @param points metres, at least one
 * @param toEye unit vector from the tree to the eye
 * @param fieldDeg upright field of view of the picture
 * @param aspect width over height
 * @param margin share of the picture left free on each side, 0 to below 0.5
 */
export function frame(
  points: readonly Vec3[],
  toEye: Vec3,
  fieldDeg: number,
  aspect: number,
  margin: number,
): Framing {
  if (points.length === 0) throw new Error('frame: at least one point is needed, got none');
  const { right, upward } = pictureAxes(toEye);
  const centre = [right, upward, toEye].map((axis) => scale(axis, middle(points.map((p) => dot(p, axis)))));
  const target = centre.reduce((sum, part) => add(sum, part), [0, 0, 0] as Vec3);
  const halfHeight = Math.tan((fieldDeg * Math.PI) / 360) * (1 - 2 * margin);
  const halfWidth = halfHeight * aspect;
  let distanceM = nearestM;
  for (const point of points) {
    const offset = sub(point, target);
    const sideways = Math.abs(dot(offset, right)) / halfWidth;
    const upright = Math.abs(dot(offset, upward)) / halfHeight;
    distanceM = Math.max(distanceM, dot(offset, toEye) + Math.max(sideways, upright, nearestM));
  }
  return { eye: add(target, scale(toEye, distanceM)), target };
}

/** The same in a picture of which something is covered above and below: what is seen fills the room between. */
export function frameWithin(
  points: readonly Vec3[],
  toEye: Vec3,
  fieldDeg: number,
  size: { readonly width: number; readonly height: number },
  covered: { readonly above: number; readonly below: number },
): Framing {
  const openPx = Math.max(0.4 * size.height, size.height - covered.above - covered.below);
  const tan = Math.tan((fieldDeg * Math.PI) / 360);
  const openDeg = (360 / Math.PI) * Math.atan((tan * openPx) / size.height);
  const { eye, target } = frame(points, toEye, openDeg, size.width / openPx, 0.02);
  const upM = (length(sub(eye, target)) * tan * (covered.above - covered.below)) / size.height;
  const shift = scale(pictureAxes(toEye).upward, upM);
  return { eye: add(eye, shift), target: add(target, shift) };
}

/** Where an eye stands to whose picture all rays are parallel, and how large a metre is in it. */
export interface FlatFraming extends Framing {
  readonly pxPerM: number;
}

/** How far off a far eye is set down, metres; any distance shows the same. */
const farM = 60;

/** The same as `frameWithin` for an eye so far away, such as the sun's, that all rays run side by side. */
export function frameFromAfar(
  points: readonly Vec3[],
  toEye: Vec3,
  size: { readonly width: number; readonly height: number },
  covered: { readonly above: number; readonly below: number },
): FlatFraming {
  if (points.length === 0) throw new Error('frameFromAfar: at least one point is needed, got none');
  const { right, upward } = pictureAxes(toEye);
  const spans = [right, upward].map((axis) => {
    const along = points.map((point) => dot(point, axis));
    const centre = middle(along);
    return { axis, centre, halfM: Math.max(nearestM, ...along.map((at) => Math.abs(at - centre))) };
  }) as [Span, Span];
  const openPx = Math.max(0.4 * size.height, size.height - covered.above - covered.below);
  const [across, up] = spans;
  const pxPerM = 0.96 * Math.min(size.width / (2 * across.halfM), openPx / (2 * up.halfM));
  const shiftM = (covered.above - covered.below) / 2 / pxPerM;
  const depthM = middle(points.map((point) => dot(point, toEye)));
  const level = add(scale(across.axis, across.centre), scale(up.axis, up.centre + shiftM));
  const target = add(level, scale(toEye, depthM));
  return { eye: add(target, scale(toEye, farM)), target, pxPerM };
}

interface Span {
  readonly axis: Vec3;
  readonly centre: number;
  readonly halfM: number;
}

/** The views whose rays are parallel: what is drawn there keeps its depth. */
export const flatSides = ['north', 'east', 'south', 'west', 'above'] as const;
export type FlatSide = (typeof flatSides)[number];

const toFlatEye: Readonly<Record<FlatSide, Vec3>> = {
  north: [0, 0, -1],
  east: [1, 0, 0],
  south: [0, 0, 1],
  west: [-1, 0, 0],
  above: [0, 1, 0],
};

/** Direction of the eye for each named view; the free one looks from where the grower stands, or the south-south-east. */
export function viewDirection(side: FlatSide | 'free', homeBearingDeg: number): Vec3 {
  return side === 'free' ? direction(homeBearingDeg, 14) : toFlatEye[side];
}

/** An eye straight above is set down so little to the south that nobody sees it: so north is up in the picture. */
const southwardM = 6e-5;

/** The eye of a flat view that sees all points between what covers the picture. */
export function flatFraming(
  points: readonly Vec3[],
  toEye: Vec3,
  size: { readonly width: number; readonly height: number },
  covered: { readonly above: number; readonly below: number },
): FlatFraming {
  const { eye, target, pxPerM } = frameFromAfar(points, toEye, size, covered);
  return { eye: toEye[1] === 1 ? add(eye, [0, 0, southwardM]) : eye, target, pxPerM };
}

/** Where an eye of the same picture stands whose rays are not parallel: what lies in the middle keeps its size. */
export function nearFraming(flat: FlatFraming, fieldDeg: number, heightPx: number): Framing {
  const distanceM = heightPx / (2 * Math.tan((fieldDeg * Math.PI) / 360) * flat.pxPerM);
  const { eye, target } = flat;
  return { eye: add(target, scale(normalize(sub(eye, target)), distanceM)), target };
}

/** Half the height of what is seen round a small thing, metres. */
const closeUpM = 0.28;

/** Corners of a cube about a point. */
const cubeAbout = ([x, y, z]: Vec3, halfM: number): Vec3[] =>
  [-halfM, halfM].flatMap((dx) =>
    [-halfM, halfM].flatMap((dy) => [-halfM, halfM].map((dz): Vec3 => [x + dx, y + dy, z + dz])),
  );

/** The eye near some points of the tree, on their side of the trunk; `here` gives the side when they are over it. */
export function closeUp(
  points: readonly Vec3[],
  foot: Vec3,
  here: Framing,
  fieldDeg: number,
  aspect: number,
  margin: number,
): Framing {
  const middle = frame(points, [0, 0, 1], fieldDeg, aspect, 0).target;
  const outward: Vec3 = [middle[0] - foot[0], 0, middle[2] - foot[2]];
  const aside = Math.hypot(outward[0], outward[2]) > 0.05;
  const facing = bearingDeg(aside ? outward : sub(here.eye, here.target));
  const seen = [...points, ...cubeAbout(middle, closeUpM)];
  return frame(seen, direction(facing, 18), fieldDeg, aspect, margin);
}

/** How much of the room a thing takes up that is looked at closely: the rest is for what is done to it. Our choice. */
const closeShare = 0.72;

/** The same for a flat view, which keeps its side. */
export function flatCloseUp(
  points: readonly Vec3[],
  toEye: Vec3,
  size: { readonly width: number; readonly height: number },
  covered: { readonly above: number; readonly below: number },
): FlatFraming {
  const middle = frame(points, [0, 0, 1], 34, 1, 0).target;
  const close = flatFraming([...points, ...cubeAbout(middle, closeUpM)], toEye, size, covered);
  return { ...close, pxPerM: closeShare * close.pxPerM };
}
