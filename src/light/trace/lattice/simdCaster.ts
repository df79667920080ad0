/** The fast caster: `assembly/lattice.ts` for blades, stems and sorting, the plain parts for the rest. */
import {
  cloudShares,
  cutToLength,
  type LatticeCaster,
  type MakeLatticeCaster,
  plainCaster,
} from './caster.ts';
import { Collected, collect, fateOf } from './collect.ts';
import { Hits, type SortedHits } from './hits.ts';
import type { Lattice } from './lattice.ts';
import { planeOf } from './plane.ts';
import type { LatticeScene } from './scene.ts';
import { type SimdExports, simdInstance } from './simdModule.ts';
import { makeEndOnCaster } from './stems.ts';
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

function castInto(kernel: SimdExports, lattice: Lattice): void {
  const { frame, spacingM, right, top, columns, rows } = lattice;
  const { x, y, x0, y0, perM } = planeOf(lattice);
  kernel.setHitCount(0);
  kernel.castBlades(...x, ...y, ...frame.ahead, x0, y0, perM, columns, rows);
  kernel.castStems(...frame.right, ...frame.top, ...frame.ahead, right, top, spacingM, columns, rows);
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

function takeOut(kernel: SimdExports, rays: number, into: Collected): void {
  const count = kernel.collect(rays);
  into.reserve(count);
  into.hit.set(new Int32Array(kernel.memory.buffer, kernel.outAt.value, count), into.count);
  into.count += count;
}

function makeSimdCaster(kernel: SimdExports, scene: LatticeScene): LatticeCaster {
  load(kernel, scene);
  const [castTriangles, castEndOn] = [makeTriangleCaster(scene), makeEndOnCaster(scene)];
  const [extra, collected, fate] = [new Hits(), new Collected(scene.clouds.length > 0), fateOf(scene)];
  const find = (lattice: Lattice): number => {
    castInto(kernel, lattice);
    extra.count = 0;
    const endOn = new Int32Array(kernel.memory.buffer, kernel.endOnAt.value, kernel.endOnCount.value);
    castEndOn(endOn, lattice, extra);
    castTriangles(lattice, extra);
    addHits(kernel, extra);
    const rays = lattice.columns * lattice.rows;
    kernel.makeRayRoom(rays);
    kernel.sort(rays);
    return rays;
  };
  return {
    cast: (lattice) => sortedHits(kernel, find(lattice)),
    collect: (lattice) => {
      const rays = find(lattice);
      if (scene.clouds.length === 0) takeOut(kernel, rays, collected);
      else {
        const sorted = sortedHits(kernel, rays);
        collect(scene, fate, sorted, rays, cloudShares(scene, lattice, sorted), collected);
      }
      return collected.count;
    },
    collected: () => cutToLength(collected),
  };
}

/** Whether the fast caster works on this platform. */
export const hasSimd = (): boolean => simdInstance() !== null;

/** The fast caster where the platform has WebAssembly with vectors, else the plain one; they find the same hits. */
export const fastestCaster: MakeLatticeCaster = (scene) => {
  const kernel = simdInstance();
  return kernel === null ? plainCaster(scene) : makeSimdCaster(kernel, scene);
};
