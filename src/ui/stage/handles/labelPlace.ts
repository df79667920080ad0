/** Where the figures of a branch stand in the picture: near its tip, clear of the wood and of the fingers that pull it. */
import type { Room } from './handleLayout.ts';

type Xy = readonly [x: number, y: number];

export interface LabelSize {
  readonly width: number;
  readonly height: number;
}

/** From the tip to the nearest edge: past the handle and the finger on it. From what is to stay in sight, pixels: our choice. */
const besidePx = 64;
const clearPx = 26;
const edgePx = 8;
/** The branch is taken for a straight line of so many points. */
const samples = 12;

/** The way from a rectangle to a point, pixels; 0 inside. */
function away([left, top]: Xy, { width, height }: LabelSize, [x, y]: Xy): number {
  return Math.hypot(Math.max(left - x, 0, x - left - width), Math.max(top - y, 0, y - top - height));
}

/**
 * The upper left corner: the first place near the tip that hides nothing, else that which hides least.
 * @param holds where fingers take hold
 */
export function labelPlace(base: Xy, tip: Xy, label: LabelSize, room: Room, holds: readonly Xy[]): Xy {
  const { width, height } = label;
  const [x, y] = tip;
  const middle = y - height / 2;
  const outward = x >= base[0] ? x + besidePx : x - besidePx - width;
  const inward = x >= base[0] ? x - besidePx - width : x + besidePx;
  const [lowest, farthest] = [room.bottom - height, room.right - width];
  const wanted: readonly Xy[] = [
    [outward, middle],
    [x - width / 2, y - besidePx - height],
    [outward, y - besidePx - height],
    [inward, middle],
    [inward, y - besidePx - height],
    [outward, y + besidePx],
    [room.left, room.top],
    [farthest, room.top],
    [farthest, lowest],
    [room.left, lowest],
  ];
  const kept = Array.from({ length: samples + 1 }, (_, i): Xy => {
    const t = i / samples;
    return [base[0] + (x - base[0]) * t, base[1] + (y - base[1]) * t];
  }).concat(holds);
  const within = (value: number, low: number, high: number): number =>
    Math.max(low + edgePx, Math.min(high - edgePx, value));
  const places = wanted.map(
    ([left, top]): Xy => [within(left, room.left, farthest), within(top, room.top, lowest)],
  );
  const clearance = places.map((place) => Math.min(...kept.map((point) => away(place, label, point))));
  const first = clearance.findIndex((px) => px >= clearPx);
  return places[first >= 0 ? first : clearance.indexOf(Math.max(...clearance))] as Xy;
}
