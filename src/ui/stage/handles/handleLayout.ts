/** Where the handles of a branch lie in the picture, and where a finger takes hold of them. */
import { type HandlePlaces, outFrom } from '../../../editor/pull/handlePlaces.ts';
import type { Pull } from '../../../editor/pull/pull.ts';
import { add, cross, length, scale, type Vec3 } from '../../../geometry/vec.ts';
import type { StageEye } from '../../scene/stageModel.ts';

export type HandleKind = 'tip' | 'base' | 'bend' | 'round' | 'thickness';
type Xy = readonly [x: number, y: number];

export interface Handle {
  readonly key: string;
  readonly kind: HandleKind;
  /** Of the bends, from 0. */
  readonly nth: number;
  /** Where it is shown, CSS pixels of the picture: the place on the branch that it moves, or a place beside it. */
  readonly at: Xy;
  /** The middle of the wood that it goes round or that it thickens; the same place for the others. */
  readonly from: Xy;
  /** The ring of `round` lies so far from the centre of the wood. */
  readonly radiusM: number;
}

export interface Reach {
  /** A handle is hit within a circle of this size, pixels. */
  readonly hitPx: number;
  /** From the place to where it is taken hold of, so that the finger does not hide the place. */
  readonly offPx: number;
}

/** Under a finger and under the point of a mouse or pen. A mouse hides nothing; 24 px is the least of WCAG 2.2, 2.5.8. */
export const reaches = { touch: { hitPx: 44, offPx: 38 }, fine: { hitPx: 24, offPx: 0 } } as const;

/** The ring round the parent, and how far beside the wood its thickness is taken, pixels: our choice. */
const ringPx = 40;
const besidePx = 22;

const atPixel = (eye: StageEye, point: Vec3): Xy | null => {
  const pixel = eye.project(point);
  return pixel === null ? null : [pixel[0], pixel[1]];
};

/** All handles that can be seen, the most wanted first. */
export function handlesOf(places: HandlePlaces, eye: StageEye): Handle[] {
  const base = eye.project(places.base);
  if (base === null) return [];
  const radiusM = ringPx / eye.pxPerM(base[2]);
  const { parent, bends, thick } = places;
  const beside = besideWood(thick, eye, base[2]);
  const middle = Math.floor(bends.length / 2);
  const onWood = (kind: HandleKind, point: Vec3, nth = 0): Placed => ({ kind, nth, point, from: point });
  const bendHandles = bends.map((point, nth) => onWood('bend', point, nth));
  const round = parent === null ? [] : [outFrom(places.base, parent.outward, -radiusM)];
  const wanted: readonly Placed[] = [
    onWood('tip', places.tip),
    ...(parent === null ? [] : [onWood('base', places.base)]),
    ...bendHandles.filter(({ nth }) => nth === middle),
    { kind: 'thickness', nth: 0, point: beside, from: thick.at },
    ...round.map((point): Placed => ({ kind: 'round', nth: 0, point, from: places.base })),
    ...bendHandles.filter(({ nth }) => nth !== middle),
  ];
  return wanted.flatMap(({ kind, nth, point, from }) => {
    const [at, middleAt] = [atPixel(eye, point), atPixel(eye, from)];
    if (at === null || middleAt === null) return [];
    return [{ key: `${kind}-${nth}`, kind, nth, at, from: middleAt, radiusM }];
  });
}

interface Placed {
  readonly kind: HandleKind;
  readonly nth: number;
  readonly point: Vec3;
  readonly from: Vec3;
}

/** Just outside the bark, on the side that is lower in the picture. */
function besideWood({ at, along, diameterM }: HandlePlaces['thick'], eye: StageEye, depthM: number): Vec3 {
  const across = cross(along, eye.facing);
  const outM = diameterM / 2 + besidePx / eye.pxPerM(depthM);
  const ends = [1, -1].map((way) => add(at, scale(unit(across), way * outM)));
  const [one, other] = ends.map((end) => eye.project(end)?.[1] ?? 0);
  return ends[(one ?? 0) >= (other ?? 0) ? 0 : 1] as Vec3;
}

const unit = (v: Vec3): Vec3 => (length(v) > 0 ? scale(v, 1 / length(v)) : [1, 0, 0]);

/** The twelve ways in which a hold may lie from its place, the wanted one first. */
const waysFrom = (wantedRad: number): readonly number[] =>
  [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6].map((n) => wantedRad + (n * Math.PI) / 6);

/** A part of the picture, pixels. */
export interface Room {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** From a part of the picture to a place, pixels; 0 inside. */
export const awayFrom = ({ left, top, right, bottom }: Room, [x, y]: Xy): number =>
  Math.hypot(Math.max(left - x, 0, x - right), Math.max(top - y, 0, y - bottom));

/** Without what covers it above and below, and in a narrow picture without the views at its left: as the sheet of style lays them. */
export const roomIn = ({ width, height }: { readonly width: number; readonly height: number }): Room =>
  width < narrowPx
    ? { left: 58, top: 58, right: width, bottom: height - 56 }
    : { left: 0, top: 64, right: width, bottom: height - 64 };

/** A picture narrower than this is a phone's. */
export const narrowPx = 600;

/**
 * From each place to where it is taken hold of: clear of every other hold and of the tools. Places for which there is no room are left
 * out: a nearer look makes room.
 * @param tools what lies over the picture, each with its own room
 */
export function holdsOf(
  handles: readonly Handle[],
  room: Room,
  { hitPx, offPx }: Reach,
  tools: readonly Room[],
): ReadonlyMap<string, Xy> {
  const taken: Xy[] = [];
  const holds = new Map<string, Xy>();
  const base = handles.find(({ kind }) => kind === 'base')?.at ?? [(room.left + room.right) / 2, room.bottom];
  const isFree = ([x, y]: Xy): boolean =>
    x > room.left + hitPx / 2 &&
    y > room.top + hitPx / 2 &&
    x < room.right - hitPx / 2 &&
    y < room.bottom - hitPx / 2 &&
    tools.every((tool) => awayFrom(tool, [x, y]) >= hitPx / 2) &&
    taken.every((other) => Math.hypot(x - other[0], y - other[1]) >= hitPx);
  for (const { key, kind, at } of handles) {
    const outward = Math.atan2(at[1] - base[1], at[0] - base[0]);
    const wanted = kind === 'tip' ? outward : kind === 'base' ? Math.PI / 2 : outward + Math.PI / 2;
    const offs: Xy[] = [offPx, offPx + 24].flatMap((px) =>
      waysFrom(wanted).map((way): Xy => [px * Math.cos(way), px * Math.sin(way)]),
    );
    const off = offs.find(([dx, dy]) => isFree([at[0] + dx, at[1] + dy]));
    if (off === undefined) continue;
    taken.push([at[0] + off[0], at[1] + off[1]]);
    holds.set(key, off);
  }
  return holds;
}

/** A thickness doubles over so many pixels: our choice. */
const doublingPx = 70;

/** What a handle does when it is moved so far in the picture. */
export function pullBy(
  { kind, nth, at, from, radiusM }: Handle,
  eye: StageEye,
  dx: number,
  dy: number,
): Pull {
  if (kind === 'thickness') {
    const [outX, outY] = [at[0] - from[0], at[1] - from[1]];
    const outPx = (dx * outX + dy * outY) / Math.max(1, Math.hypot(outX, outY));
    return { by: 'thickness', times: 2 ** (outPx / doublingPx) };
  }
  const [x, y] = [at[0] + dx, at[1] + dy];
  // The handle of the ring lies across from the branch.
  if (kind === 'round') return { by: 'round', radiusM, sight: eye.sightAt(2 * from[0] - x, 2 * from[1] - y) };
  const sight = eye.sightAt(x, y);
  return kind === 'bend' ? { by: 'bend', nth, sight } : { by: kind, sight };
}

/** One press of an arrow key: pixels, metres, degrees, times. Our choice. */
const keyStep = { px: 10, alongM: 0.01, aroundDeg: 5, times: 1.1 };

/** What so many presses of the arrow keys do; tenths are small steps. */
export function pullByKeys(handle: Handle, eye: StageEye, right: number, upwards: number): Pull {
  const along = right + upwards;
  if (handle.kind === 'base') return { by: 'slide', alongM: along * keyStep.alongM };
  if (handle.kind === 'round') return { by: 'turn', aroundDeg: along * keyStep.aroundDeg };
  if (handle.kind === 'thickness') return { by: 'thickness', times: keyStep.times ** along };
  return pullBy(handle, eye, right * keyStep.px, -upwards * keyStep.px);
}
