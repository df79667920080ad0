/** The fast caster: `assembly/lattice.ts` for blades, stems and sorting, the plain parts for the rest. */
import {
  cloudShares,
  type LatticeCaster,
  type MakeLatticeCaster,
  makeWholeSweep,
  plainCaster,
} from './caster.ts';
import { type Collected, collect, fateOf } from './collect.ts';
import { Hits, type SortedHits } from './hits.ts';
import { bladeStride, type LatticeScene } from './scene.ts';
import { type SimdExports, simdInstance } from './simdModule.ts';
import { makeEndOnCaster } from './stems.ts';
import type { Sweep } from './sweep.ts';
import { makeTriangleCaster } from './triangles.ts';

/** A ball round each blade: its middle (x, y, z) and its radius, metres. */
function ballsOf({ bladeCount, blade }: LatticeScene): Float64Array {
  const ball = new Float64Array(4 * bladeCount);
  for (let b = 0; b < bladeCount; b++) {
    let [along, across] = [0, 0];
    for (let k = 0, at = b * bladeStride; k < 3; k++, at++) {
      const [i, j] = [blade[at + 3] as number, blade[at + 6] as number];
      ball[4 * b + k] = (blade[at] as number) + (i + j) / 2;
      along += (i + j) ** 2;
      across += (i - j) ** 2;
    }
    ball[4 * b + 3] = Math.sqrt(Math.max(along, across)) / 2;
  }
  return ball;
}

function load(kernel: SimdExports, scene: LatticeScene, fate: Uint8Array): void {
  const masks = scene.masks.arrays();
  const { bladeCount, stemCount, kind } = scene;
  const { texel, rowStart, edge } = masks;
  kernel.setUp(bladeCount, stemCount, kind.length, texel.length, rowStart.length, edge.length / 4);
  const { buffer } = kernel.memory;
  new Float64Array(buffer, kernel.bladeAt.value).set(scene.blade);
  new Float64Array(buffer, kernel.ballAt.value).set(ballsOf(scene));
  new Int32Array(buffer, kernel.bladeMaskAt.value).set(scene.bladeMask);
  new Float64Array(buffer, kernel.stemAt.value).set(scene.stem);
  new Uint8Array(buffer, kernel.texelAt.value).set(texel);
  new Int32Array(buffer, kernel.rowStartAt.value).set(rowStart);
  new Float64Array(buffer, kernel.edgeAt.value).set(edge);
  new Int32Array(buffer, kernel.kindAt.value).set(kind);
  new Uint8Array(buffer, kernel.fateAt.value).set(fate);
}

/** The module's memory as whole numbers, made anew when it has grown: views are dear next to a direction of a small tree. */
function makeView(kernel: SimdExports): () => Int32Array {
  let view = new Int32Array(kernel.memory.buffer);
  return () => {
    const { buffer } = kernel.memory;
    if (view.buffer !== buffer) view = new Int32Array(buffer);
    return view;
  };
}

/** Writes the first `count` entries at an address. */
function put(view: Int32Array, address: number, entries: Int32Array, count: number): void {
  for (let k = 0, at = address / 4; k < count; k++, at++) view[at] = entries[k] as number;
}

function castInto(kernel: SimdExports, viewOf: () => Int32Array, sweep: Sweep): void {
  const { lattice, followed } = sweep;
  const { frame, spacingM, right, top, left, low, columns, rows } = lattice;
  const [[rx, ry, rz], [tx, ty, tz], [ax, ay, az]] = [frame.right, frame.top, frame.ahead];
  const rays = followed.isSparse ? rows * columns : 0;
  kernel.makeSweepRoom(rows, rays);
  kernel.setPlane(rx, ry, rz, tx, ty, tz, ax, ay, az, right, top, spacingM);
  kernel.setWindow(left, low, columns, rows);
  const view = viewOf();
  put(view, kernel.spanLeftAt.value, followed.left, rows);
  put(view, kernel.spanRightAt.value, followed.right, rows);
  if (rays > 0) {
    new Uint8Array(kernel.memory.buffer, kernel.followedAt.value, rays).set(followed.ray.subarray(0, rays));
  }
  kernel.cast(followed.isSparse);
}

/** Adds hits that were found outside. */
function addHits(kernel: SimdExports, { ray, ahead, thing, count }: Hits): void {
  if (count === 0) return;
  kernel.reserve(count);
  const [{ buffer }, had] = [kernel.memory, kernel.hitCount.value];
  new Int32Array(buffer, kernel.rayAt.value).set(ray.subarray(0, count), had);
  new Float64Array(buffer, kernel.aheadAt.value).set(ahead.subarray(0, count), had);
  new Int32Array(buffer, kernel.thingAt.value).set(thing.subarray(0, count), had);
  kernel.setHitCount(had + count);
}

/** Views of the sorted hits; good until the module takes more memory. */
function sortedHits(kernel: SimdExports, rays: number): SortedHits {
  const [{ buffer }, count] = [kernel.memory, kernel.hitCount.value];
  return {
    start: new Int32Array(buffer, kernel.startAt.value, rays + 1),
    ahead: new Float64Array(buffer, kernel.sortedAheadAt.value, count),
    thing: new Int32Array(buffer, kernel.sortedThingAt.value, count),
  };
}

function takeOut(kernel: SimdExports, viewOf: () => Int32Array, rays: number, into: Collected): void {
  const count = kernel.collect(rays);
  const [runs, view] = [kernel.runCount.value, viewOf()];
  const [outAt, rayAt] = [kernel.outAt.value / 4, kernel.outRayAt.value / 4];
  into.reserve(count, runs);
  into.hit.set(view.subarray(outAt, outAt + count), into.count);
  into.ray.set(view.subarray(rayAt, rayAt + runs), into.runs);
  into.count += count;
  into.runs += runs;
}

function makeSimdCaster(kernel: SimdExports, scene: LatticeScene): LatticeCaster {
  const fate = fateOf(scene);
  load(kernel, scene, fate);
  const viewOf = makeView(kernel);
  const [castTriangles, castEndOn] = [makeTriangleCaster(scene), makeEndOnCaster(scene)];
  const [extra, wholeSweep] = [new Hits(), makeWholeSweep()];
  const find = (sweep: Sweep): number => {
    castInto(kernel, viewOf, sweep);
    extra.count = 0;
    if (kernel.endOnCount.value > 0) {
      const endOn = new Int32Array(kernel.memory.buffer, kernel.endOnAt.value, kernel.endOnCount.value);
      castEndOn(endOn, sweep, extra);
    }
    castTriangles(sweep, extra);
    addHits(kernel, extra);
    const rays = sweep.lattice.columns * sweep.lattice.rows;
    kernel.makeRayRoom(rays);
    kernel.sort(rays);
    return rays;
  };
  return {
    cast: (lattice) => sortedHits(kernel, find(wholeSweep(lattice))),
    collect: (sweep, into) => {
      const rays = find(sweep);
      if (scene.clouds.length === 0) {
        takeOut(kernel, viewOf, rays, into);
        return;
      }
      const sorted = sortedHits(kernel, rays);
      const shares = cloudShares(scene, sweep.lattice, sorted);
      collect(scene, fate, sorted, rays, shares, into);
    },
  };
}

/** Whether the fast caster works on this platform. */
export const hasSimd = (): boolean => simdInstance() !== null;

/** The fast caster where the platform has WebAssembly with vectors, else the plain one; they find the same hits. */
export const fastestCaster: MakeLatticeCaster = (scene) => {
  const kernel = simdInstance();
  return kernel === null ? plainCaster(scene) : makeSimdCaster(kernel, scene);
};
