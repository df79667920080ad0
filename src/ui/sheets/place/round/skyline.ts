/** The measured skyline: how high it stands at every bearing, and points moved, added and taken away. */
import type { TreeFile } from '../../../../document/treeFile.ts';
import { skyPixelOf } from './frame.ts';

export type Skyline = NonNullable<TreeFile['site']['skyline']>;
export type SkylinePoint = Skyline['points'][number];

const byBearing = (a: SkylinePoint, b: SkylinePoint): number => a.bearingDeg - b.bearingDeg;

/** Height at a bearing, straight between the points on either side, round past north. Needs one point at least. */
export function skylineAt(skyline: readonly SkylinePoint[], bearingDeg: number): number {
  const sorted = skyline.toSorted(byBearing);
  const next = sorted.findIndex((point) => point.bearingDeg >= bearingDeg);
  const after = sorted[next < 0 ? 0 : next] as SkylinePoint;
  const before = sorted[(next <= 0 ? sorted.length : next) - 1] as SkylinePoint;
  const spanDeg = (after.bearingDeg - before.bearingDeg + 360) % 360;
  if (spanDeg === 0) return after.heightDeg;
  const share = ((bearingDeg - before.bearingDeg + 360) % 360) / spanDeg;
  return before.heightDeg + share * (after.heightDeg - before.heightDeg);
}

/** The band between the horizon and the skyline as an SVG path. */
export function hiddenSky(skyline: readonly SkylinePoint[]): string {
  const bearings = [
    ...Array.from({ length: 180 }, (_, i) => 2 * i),
    ...skyline.map((p) => p.bearingDeg),
  ].sort((a, b) => a - b);
  const ring = (height: (bearing: number) => number): string => {
    const pixels = bearings.map((bearing) => skyPixelOf(bearing, height(bearing)));
    return `M${pixels.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
  };
  return `${ring(() => 0)}${ring((bearing) => skylineAt(skyline, bearing))}`;
}

/** Half way through the widest gap between two points: where another one tells most. */
export function nextPoint(skyline: readonly SkylinePoint[]): SkylinePoint {
  const sorted = skyline.toSorted(byBearing);
  const gaps = sorted.map(({ bearingDeg }, i) => {
    const next = sorted[(i + 1) % sorted.length] as SkylinePoint;
    return { bearingDeg, spanDeg: (next.bearingDeg - bearingDeg + 360) % 360 || 360 };
  });
  const widest = gaps.reduce((best, gap) => (gap.spanDeg > best.spanDeg ? gap : best));
  const bearingDeg = Math.round(widest.bearingDeg + widest.spanDeg / 2) % 360;
  return { bearingDeg, heightDeg: Math.round(skylineAt(skyline, bearingDeg)) };
}

/** The highest a point of the skyline may stand in the tree file, degrees. */
const highestDeg = 85;

/** One point moved, in whole degrees. */
export function movedPoint(skyline: Skyline, index: number, bearingDeg: number, heightDeg: number): Skyline {
  const point = {
    bearingDeg: Math.round(((bearingDeg % 360) + 360) % 360),
    heightDeg: Math.min(highestDeg, Math.max(0, Math.round(heightDeg))),
  };
  return { ...skyline, points: skyline.points.with(index, point) };
}
