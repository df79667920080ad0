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
import { addHits, aim, load, loadBalls, makeView } from './kernel.ts';
import type { LatticeScene } from './scene.ts';
import { type SimdExports, simdInstance } from './simdModule.ts';
import { makeEndOnCaster } from './stems.ts';
import type { Sweep } from './sweep.ts';
import { makeTriangleCaster } from './triangles.ts';

/** Writes the first `count` entries at an address. */
function put(view: Int32Array, address: number, entries: Int32Array, count: number): void {
  for (let k = 0, at = address / 4; k < count; k++, at++) view[at] = entries[k] as number;
}

function castInto(kernel: SimdExports, viewOf: () => Int32Array, { lattice, followed }: Sweep): void {
  const { columns, rows } = lattice;
  const rays = followed.isSparse ? rows * columns : 0;
  kernel.makeSweepRoom(rows, rays);
  aim(kernel, lattice);
  const view = viewOf();
  put(view, kernel.spanLeftAt.value, followed.left, rows);
  put(view, kernel.spanRightAt.value, followed.right, rows);
  put(view, kernel.followedAt.value, followed.ray, rays);
  kernel.cast(followed.isSparse);
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
  load(kernel, scene);
  let hasBalls = false;
  const viewOf = makeView(kernel);
  const [castTriangles, castEndOn] = [makeTriangleCaster(scene), makeEndOnCaster(scene)];
  const [extra, wholeSweep] = [new Hits(), makeWholeSweep()];
  const find = (sweep: Sweep): number => {
    if (sweep.followed.isSparse && !hasBalls) {
      loadBalls(kernel, scene);
      hasBalls = true;
    }
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
