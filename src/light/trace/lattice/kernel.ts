/** What passes between the lattice in TypeScript and its twin in `assembly`. */
import { ballsOfBlades, ballsOfStems } from './balls.ts';
import { fateOf } from './collect.ts';
import type { Hits } from './hits.ts';
import type { Lattice } from './lattice.ts';
import { bladeStride, type LatticeScene } from './scene.ts';
import type { SimdExports } from './simdModule.ts';

function putNumbers(kernel: SimdExports, address: number, ...parts: readonly Float64Array[]): void {
  let at = address;
  for (const part of parts) {
    new Float64Array(kernel.memory.buffer, at, part.length).set(part);
    at += part.byteLength;
  }
}

type Things = Pick<LatticeScene, 'bladeCount' | 'stemCount' | 'blade' | 'stem' | 'bladeMask'>;

/** Numbers of the blades there are; there is room for those without area. */
const used = ({ blade, bladeCount }: Things): Float64Array => blade.subarray(0, bladeStride * bladeCount);

/** Nothing behind the things of the scene. */
const noThings: Things = {
  bladeCount: 0,
  stemCount: 0,
  blade: new Float64Array(0),
  stem: new Float64Array(0),
  bladeMask: new Int32Array(0),
};

/**
 * Hands a scene over.
 * @param more things behind those of the scene, which are no part of it; their outlines are in the scene's table of masks
 */
export function load(kernel: SimdExports, scene: LatticeScene, more: Things = noThings): void {
  const { texel, rowStart, edge } = scene.masks.arrays();
  const { bladeCount, stemCount, bladeMask, kind } = scene;
  const [things, edges] = [kind.length, edge.length / 4];
  const extra = [more.bladeCount, more.stemCount] as const;
  kernel.setUp(bladeCount, stemCount, ...extra, things, texel.length, rowStart.length, edges);
  const { buffer } = kernel.memory;
  putNumbers(kernel, kernel.bladeAt.value, used(scene), used(more));
  putNumbers(kernel, kernel.stemAt.value, scene.stem, more.stem);
  new Int32Array(buffer, kernel.bladeMaskAt.value).set(bladeMask);
  new Int32Array(buffer, kernel.bladeMaskAt.value + bladeMask.byteLength).set(more.bladeMask);
  new Uint8Array(buffer, kernel.texelAt.value).set(texel);
  new Int32Array(buffer, kernel.rowStartAt.value).set(rowStart);
  putNumbers(kernel, kernel.edgeAt.value, edge);
  new Int32Array(buffer, kernel.kindAt.value).set(kind);
  new Uint8Array(buffer, kernel.fateAt.value).set(fateOf(scene));
}

/** What sparse casts need besides: balls round the things of the scene. */
export function loadBalls(kernel: SimdExports, scene: LatticeScene): void {
  new Float32Array(kernel.memory.buffer, kernel.bladeBallAt.value).set(ballsOfBlades(scene));
  new Float32Array(kernel.memory.buffer, kernel.stemBallAt.value).set(ballsOfStems(scene));
}

/** The module's memory as whole numbers, made anew when it has grown: views are dear next to a direction of a small tree. */
export function makeView(kernel: SimdExports): () => Int32Array {
  let view = new Int32Array(kernel.memory.buffer);
  return () => {
    const { buffer } = kernel.memory;
    if (view.buffer !== buffer) view = new Int32Array(buffer);
    return view;
  };
}

/** Turns the module to a lattice. */
export function aim(kernel: SimdExports, { frame, spacingM, right, top, ...window }: Lattice): void {
  const [[rx, ry, rz], [tx, ty, tz], [ax, ay, az]] = [frame.right, frame.top, frame.ahead];
  kernel.setPlane(rx, ry, rz, tx, ty, tz, ax, ay, az, right, top, spacingM);
  kernel.setWindow(window.left, window.low, window.columns, window.rows);
}

/** Adds hits that were found outside. */
export function addHits(kernel: SimdExports, { ray, ahead, thing, count }: Hits): void {
  if (count === 0) return;
  kernel.reserve(count);
  const [{ buffer }, had] = [kernel.memory, kernel.hitCount.value];
  new Int32Array(buffer, kernel.rayAt.value).set(ray.subarray(0, count), had);
  new Float64Array(buffer, kernel.aheadAt.value).set(ahead.subarray(0, count), had);
  new Int32Array(buffer, kernel.thingAt.value).set(thing.subarray(0, count), had);
  kernel.setHitCount(had + count);
}
