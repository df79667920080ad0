/**
 * Endless slabs of small leaves at random, traced. For one direction an endless slab made of one tile repeated
 * equals a scene in which each leaf is moved by whole tiles to where its shade falls on the tile of receivers; leaves whose shade
 * lies across the tile's edge stand there several times. So there are no edges.
 */
import type { Blade, Receiver } from '../../../src/geometry/surface.ts';
import { cross, scale, type Vec3 } from '../../../src/geometry/vec.ts';
import { listShares } from '../../../src/light/exposure.ts';
import { traceWave } from '../../../src/light/trace/wave.ts';
import { anyDirection, type Draw } from '../../light/trace/scene.ts';
import type { Pose } from './poses.ts';

/** A quick stream of numbers in [0, 1) for millions of leaves: a Weyl sequence through the finaliser of MurmurHash3. */
export function quickStream(seed: number): Draw {
  let state = Math.imul(seed, 0x9e3779b9);
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let x = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
    return ((x ^ (x >>> 16)) >>> 0) / 4294967296;
  };
}

const square = [
  [-0.5, -0.5],
  [0.5, -0.5],
  [0.5, 0.5],
  [-0.5, 0.5],
] as const;

export interface SlabInput {
  readonly draw: Draw;
  readonly pose: Pose;
  /** Leaf area over ground area of each layer; layers are owners 1, 2, ... from the bottom up. */
  readonly layers: readonly number[];
  readonly leafAreaM2: number;
  readonly transmittance: number;
  /** Leaves that hang exactly above one another; 1 when left out. */
  readonly clump?: number;
}

/** Square leaf of the given side, turned anyhow within its pose. */
function leafAxes(draw: Draw, pose: Pose, sideM: number): [Vec3, Vec3] {
  const normal = pose(draw);
  const turn = anyDirection(draw);
  const raw = cross(normal, turn);
  const along = scale(raw, sideM / Math.hypot(...raw));
  return [along, cross(normal, along)];
}

/** Copies of a leaf at height y whose shade along `toSky` falls on the tile 0 to 1 by 0 to 1 at height 0. */
function copies(leaf: Omit<Blade, 'origin'>, centre: Vec3, toSky: Vec3, into: Blade[]): void {
  const [x, y, z] = centre;
  const [runX, runZ] = [toSky[0] / toSky[1], toSky[2] / toSky[1]];
  const half = (k: 0 | 2, run: number): number =>
    (Math.abs(leaf.along[k] - leaf.along[1] * run) + Math.abs(leaf.across[k] - leaf.across[1] * run)) / 2;
  const [shadeX, shadeZ] = [x - y * runX, z - y * runZ];
  const [halfX, halfZ] = [half(0, runX), half(2, runZ)];
  for (let i = Math.ceil(-shadeX - halfX); i <= 1 - shadeX + halfX; i++) {
    for (let j = Math.ceil(-shadeZ - halfZ); j <= 1 - shadeZ + halfZ; j++) {
      into.push({ ...leaf, origin: [x + i, y, z + j] });
    }
  }
}

const receiversASide = 40;

/** Level sensors under the tile, one at random in each of 40 x 40 fields. */
function sensors(draw: Draw): Receiver[] {
  return Array.from({ length: receiversASide ** 2 }, (_, i) => ({
    point: [
      (Math.floor(i / receiversASide) + draw()) / receiversASide,
      0,
      ((i % receiversASide) + draw()) / receiversASide,
    ],
    normal: [0, 1, 0],
    sides: 'one',
    onSurface: -1,
  }));
}

/** Of a beam, layer by layer upwards: share that meets no leaf at all, and share that arrives. */
export interface Passed {
  readonly untouched: number[];
  readonly arriving: number[];
}

const mean = (values: Float64Array): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** What passes the lowest layer, the lowest two, and so on, of a fresh slab. */
export function beamPassed(
  { draw, pose, layers, leafAreaM2, transmittance, clump = 1 }: SlabInput,
  toSky: Vec3,
): Passed {
  const blades: Blade[] = [];
  layers.forEach((index, layer) => {
    for (let i = 0; i < Math.round(index / leafAreaM2 / clump); i++) {
      const [along, across] = leafAxes(draw, pose, Math.sqrt(leafAreaM2));
      const optics = { transmittance, reflectance: 0 };
      const leaf = { shape: 'blade', owner: layer + 1, optics, along, across, outline: square } as const;
      const [x, y, z] = [draw(), 0.3 + layer + draw(), draw()];
      for (let copy = 0; copy < clump; copy++) copies(leaf, [x, y + copy * 0.01, z], toSky, blades);
    }
  });
  const directions = [{ toSky, kind: 'beam', cell: 0 } as const];
  const wave = traceWave({
    surfaces: blades,
    receivers: sensors(draw),
    directions,
    ownerCount: layers.length + 1,
  });
  const passed: Passed = { untouched: [], arriving: [] };
  layers.forEach((_, top) => {
    const keep = Uint8Array.from({ length: layers.length + 1 }, (_, owner) => (owner <= top + 1 ? 1 : 0));
    const shares = listShares(wave, keep);
    const rays = Float64Array.from(wave.rayList, (list) => shares[list] ?? Number.NaN);
    passed.arriving.push(mean(rays));
    passed.untouched.push(mean(rays.map((share) => (share === 1 ? 1 : 0))));
  });
  return passed;
}
