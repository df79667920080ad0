/** Seeded scenes of every shape mixed, for tests. */
import { random01 } from '../../../src/geometry/random.ts';
import type { Optics, Receiver, Surface } from '../../../src/geometry/surface.ts';
import { add, anyPerpendicular, cross, rotate, scale, type Vec3 } from '../../../src/geometry/vec.ts';

export type Draw = () => number;

/** A stream of numbers in [0, 1) from a seed. */
export function stream(seed: number): Draw {
  let asked = 0;
  return () => random01(seed, asked++);
}

export const between = (draw: Draw, low: number, high: number): number => low + (high - low) * draw();

export const pointIn = (draw: Draw, sizeM: number): Vec3 => [
  between(draw, -sizeM, sizeM),
  between(draw, 0, 1.7 * sizeM),
  between(draw, -sizeM, sizeM),
];

/** Uniform over all directions. */
export function anyDirection(draw: Draw): Vec3 {
  const y = between(draw, -1, 1);
  const turn = 2 * Math.PI * draw();
  const level = Math.sqrt(1 - y * y);
  return [level * Math.cos(turn), y, level * Math.sin(turn)];
}

/** A notched outline that is neither convex nor symmetric. */
export const lobed = [
  [0, -0.05],
  [0.31, -0.42],
  [0.45, -0.16],
  [0.83, -0.29],
  [1, 0.02],
  [0.77, 0.21],
  [0.41, 0.13],
  [0.37, 0.55],
  [0, 0.08],
] as const;
const kite = [
  [0, 0],
  [0.4, 0.33],
  [1.1, 0],
  [0.4, -0.27],
] as const;

export interface SceneSize {
  readonly leaves: number;
  readonly stems: number;
  readonly triangles: number;
  readonly clouds: number;
  readonly openReceivers: number;
}

const optics = (transmittance: number): Optics => ({ transmittance, reflectance: 0.1 });

export function bladeOf(draw: Draw, owner: number, sizeM: number): Surface & { shape: 'blade' } {
  const along = anyDirection(draw);
  const across = rotate(anyPerpendicular(along), along, 2 * Math.PI * draw());
  // Across is neither square to along nor of its length, on purpose.
  const skewed = add(scale(across, 0.9 * sizeM), scale(along, 0.2 * sizeM));
  return {
    shape: 'blade',
    owner,
    optics: optics(0.07),
    origin: pointIn(draw, 0.6),
    along: scale(along, sizeM),
    across: skewed,
    outline: draw() < 0.8 ? lobed : kite,
  };
}

function surfacesOf(draw: Draw, size: SceneSize): Surface[] {
  const owner = (): number => Math.floor(between(draw, 0, 9));
  const surfaces: Surface[] = [];
  for (let i = 0; i < size.leaves; i++) surfaces.push(bladeOf(draw, owner(), between(draw, 0.08, 0.21)));
  for (let i = 0; i < size.stems; i++) {
    const from = pointIn(draw, 0.6);
    const to = add(from, scale(anyDirection(draw), between(draw, 0, 0.35)));
    const thin = draw() < 0.8;
    const [fromRadiusM, toRadiusM] = [
      between(draw, 0.002, thin ? 0.02 : 0.15),
      between(draw, 0, thin ? 0.012 : 0.1),
    ];
    surfaces.push({ shape: 'stem', owner: owner(), optics: optics(0), from, to, fromRadiusM, toRadiusM });
  }
  for (let i = 0; i < size.triangles; i++) {
    const a = pointIn(draw, 0.7);
    const corners = [a, add(a, scale(anyDirection(draw), 0.4)), add(a, scale(anyDirection(draw), 0.3))];
    const more = [a, add(a, scale(anyDirection(draw), 0.2)), add(a, scale(anyDirection(draw), 0.5))];
    surfaces.push({
      shape: 'mesh',
      owner: owner(),
      optics: optics(0.25),
      triangles: [...corners, ...more].flat(),
    });
  }
  for (let i = 0; i < size.clouds; i++) {
    const halfSizeM: Vec3 = [between(draw, 0.1, 0.9), between(draw, 0.2, 0.5), between(draw, 0.1, 0.4)];
    const extinctionPerM = between(draw, 0.3, 1.9);
    surfaces.push({
      shape: 'cloud',
      form: i % 2 === 0 ? 'ellipsoid' : 'box',
      owner: 0,
      optics: optics(0),
      centre: pointIn(draw, 1),
      halfSizeM,
      extinctionPerM,
    });
  }
  return surfaces;
}

/** Receivers in the open (one-sided, turned anyhow) and one on each blade. */
export function sceneOf(seed: number, size: SceneSize): { surfaces: Surface[]; receivers: Receiver[] } {
  const draw = stream(seed);
  const surfaces = surfacesOf(draw, size);
  const receivers: Receiver[] = [];
  for (let i = 0; i < size.openReceivers; i++) {
    receivers.push({ point: pointIn(draw, 0.7), normal: anyDirection(draw), sides: 'one', onSurface: -1 });
  }
  surfaces.forEach((surface, onSurface) => {
    if (surface.shape !== 'blade') return;
    const [u, v] = [between(draw, 0.4, 0.5), between(draw, -0.1, 0.1)];
    const point = add(surface.origin, add(scale(surface.along, u), scale(surface.across, v)));
    const n = cross(surface.along, surface.across);
    receivers.push({ point, normal: scale(n, 1 / Math.hypot(...n)), sides: 'both', onSurface });
  });
  return { surfaces, receivers };
}
