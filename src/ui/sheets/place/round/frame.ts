/** The frame of the picture from above: the middle of the place in its middle, north up. */
import { metresPer, type Units } from '../../../../geometry/measure.ts';
import type { Spot } from './shapes.ts';

/** Width and height of the picture, and the radius of the ring of the winds, in its own units: near CSS pixels. */
export const [widthPx, ringPx] = [360, 148] as const;
const middlePx = widthPx / 2;

/** How far the ring may be from the middle, metres or feet. */
const radii = {
  metric: [2, 3, 5, 8, 12, 20, 30, 50, 75, 100],
  us: [6, 10, 15, 25, 40, 60, 100, 160, 250, 330],
} as const;

/** Radius of the ring, metres: the smallest of the round ones that holds all spots. */
export function ringRadiusM(spots: readonly Spot[], units: Units): number {
  const needM = Math.max(0, ...spots.map(([e, n]) => Math.max(Math.abs(e), Math.abs(n))));
  const perUnit = units === 'us' ? metresPer.ft : 1;
  const round = radii[units].find((radius) => radius * perUnit >= needM) ?? radii[units].at(-1) ?? 100;
  return round * perUnit;
}

/** A spot in the picture. */
export const pixelOf = ([e, n]: Readonly<Spot>, ringM: number): readonly [x: number, y: number] => [
  middlePx + (e / ringM) * ringPx,
  middlePx - (n / ringM) * ringPx,
];

/** So many pixels right and down as metres east and north, in whole steps. */
export const metresOf = (dx: number, dy: number, ringM: number, stepM: number): Spot => {
  const metres = (px: number) => Math.round(((px / ringPx) * ringM) / stepM) * stepM;
  return [metres(dx), metres(-dy)];
};

/** A point of the sky in the picture: the ring is the horizon, its middle straight up. */
export const skyPixelOf = (bearing: number, heightDeg: number): readonly [x: number, y: number] => {
  const r = (ringPx * (90 - heightDeg)) / 90;
  const a = (bearing * Math.PI) / 180;
  return [middlePx + r * Math.sin(a), middlePx - r * Math.cos(a)];
};

/** The point of the sky at a pixel: bearing 0 to 360 and height 0 to 90 degrees. */
export function skyAt(x: number, y: number): { readonly bearingDeg: number; readonly heightDeg: number } {
  const [east, north] = [x - middlePx, middlePx - y];
  const bearingDeg = ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360;
  return { bearingDeg, heightDeg: Math.min(90, Math.max(0, 90 - (90 * Math.hypot(east, north)) / ringPx)) };
}

/** Pixels as the points of a polygon or a line. */
export const points = (pixels: readonly (readonly [number, number])[]): string =>
  pixels.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
