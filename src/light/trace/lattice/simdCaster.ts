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
import type { LatticeScene } from './scene.ts';
import { type SimdExports, simdInstance } from './simdModule.ts';
import { makeEndOnCaster } from './stems.ts';
import type { Sweep } from './sweep.ts';
import { makeTriangleCaster } from './triangles.ts';

function load(kernel: SimdExports, scene: LatticeScene): void {
  const masks = scene.masks.arrays();
  const { bladeCount, stemCount, kind } = scene;
  const { texel, rowStart, edge } = masks;
  kernel.setUp(bladeCount, stemCount, kind.length, texel.length, rowStart.length, edge.length / 4);
  const { buffer } = kernel.memory;
  new Float64Array(buffer, kernel.bladeAt.value).set(scene.blade);
  new Int32Array(buffer, kernel.bladeMaskAt.value).set(scene.bladeMask);
  new Float64Array(buffer, kernel.stemAt.value).set(scene.stem);
  new Uint8Array(buffer, kernel.texelAt.value).set(texel);
  new Int32Array(buffer, kernel.rowStartAt.value).set(rowStart);
  new Float64Array(buffer, kernel.edgeAt.value).set(edge);
  new Int32Array(buffer, kernel.kindAt.value).set(kind);
  new Uint8Array(buffer, kernel.fateAt.value).set(fateOf(scene));
}

function castInto(kernel: SimdExports, { lattice, followed, ranges }: Sweep): void {
  const { frame, spacingM, right, top, left, low, columns, rows } = lattice;
  const [[rx, ry, rz], [tx, ty, tz], [ax, ay, az]] = [frame.right, frame.top, frame.ahead];
  kernel.makeSweepRoom(rows, ranges.count, followed.isSparse ? rows * columns : 0);
  kernel.setPlane(rx, ry, rz, tx, ty, tz, ax, ay, az, right, top, spacingM);
  kernel.setWindow(left, low, columns, rows);
  const { buffer } = kernel.memory;
  new Int32Array(buffer, kernel.spanLeftAt.value, rows).set(followed.left.subarray(0, rows));
  new Int32Array(buffer, kernel.spanRightAt.value, rows).set(followed.right.subarray(0, rows));
  const entries = 2 * ranges.count;
  new Int32Array(buffer, kernel.rangeAt.value, entries).set(ranges.entry.subarray(0, entries));
  if (followed.isSparse) {
    const rays = rows * columns;
    new Uint8Array(buffer, kernel.followedAt.value, rays).set(followed.ray.subarray(0, rays));
  }
  kernel.cast(ranges.count, followed.isSparse);
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

function takeOut(kernel: SimdExports, rays: number, firstRay: number, into: Collected): void {
  const count = kernel.collect(rays, firstRay);
  const [runs, { buffer }] = [kernel.runCount.value, kernel.memory];
  into.reserve(count, runs);
  into.hit.set(new Int32Array(buffer, kernel.outAt.value, count), into.count);
  into.ray.set(new Int32Array(buffer, kernel.outRayAt.value, runs), into.runs);
  into.count += count;
  into.runs += runs;
}

function makeSimdCaster(kernel: SimdExports, scene: LatticeScene): LatticeCaster {
  load(kernel, scene);
  const [castTriangles, castEndOn] = [makeTriangleCaster(scene), makeEndOnCaster(scene)];
  const [extra, fate, wholeSweep] = [new Hits(), fateOf(scene), makeWholeSweep(scene)];
  const find = (sweep: Sweep): number => {
    castInto(kernel, sweep);
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
    collect: (sweep, firstRay, into) => {
      const rays = find(sweep);
      if (scene.clouds.length === 0) {
        takeOut(kernel, rays, firstRay, into);
        return;
      }
      const sorted = sortedHits(kernel, rays);
      const shares = cloudShares(scene, sweep.lattice, sorted);
      collect(scene, fate, sorted, rays, shares, firstRay, into);
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
