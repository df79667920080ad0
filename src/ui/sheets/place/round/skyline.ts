/** The measured skyline: how high it stands at every bearing, and points moved, added and taken away. */
import type { TreeFile } from '../../../../document/treeFile.ts';
import { skylineHeightDeg } from '../../../../light/sky/horizon.ts';
import { skyPixelOf } from './frame.ts';

export type Skyline = NonNullable<TreeFile['site']['skyline']>;
export type SkylinePoint = Skyline['points'][number];

const byBearing = (a: SkylinePoint, b: SkylinePoint): number => a.bearingDeg - b.bearingDeg;

/** The band between the horizon and what stands on it, as an SVG path: two rings, filled in between. */
export function hiddenSky(heightDeg: (bearingDeg: number) => number): string {
  const ring = (height: (bearing: number) => number): string => {
    const pixels = Array.from({ length: 360 }, (_, bearing) => skyPixelOf(bearing, height(bearing)));
    return `M${pixels.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
  };
  return `${ring(() => 0)}${ring(heightDeg)}`;
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
  return { bearingDeg, heightDeg: Math.round(skylineHeightDeg(sorted, bearingDeg)) };
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
