/** A direction of leaf light brought up to date by WebAssembly: `assembly/retrace.ts`, the twin of `leafRetracer.ts`. */
import type { LeafWave } from '../leafLedger.ts';
import { makeWholeSweep } from './lattice/caster.ts';
import type { Collected } from './lattice/collect.ts';
import { Hits } from './lattice/hits.ts';
import { addHits, aim, load, loadBalls, makeView } from './lattice/kernel.ts';
import type { Lattice } from './lattice/lattice.ts';
import type { LatticeScene } from './lattice/scene.ts';
import { fastestCaster } from './lattice/simdCaster.ts';
import { type Global, type SimdExports, simdInstance } from './lattice/simdModule.ts';
import { makeEndOnCaster } from './lattice/stems.ts';
import type { Sweep } from './lattice/sweep.ts';
import { makeTriangleCaster } from './lattice/triangles.ts';
import { type Common, type LeafRetracer, type MakeLeafRetracer, retracerWith } from './leafRetracer.ts';
import { codesAfter, windowOf } from './oldRuns.ts';

/** What `assembly/retrace.ts` exports besides; addresses change when it takes more memory. */
interface RetraceExports extends SimdExports {
  readonly rangeAt: Global;
  readonly codeAfterAt: Global;
  readonly oldHitAt: Global;
  readonly oldRayAt: Global;
  readonly mergedHitAt: Global;
  readonly mergedRayAt: Global;
  readonly mergedRuns: Global;
  readonly setUpRetrace: (bladeRanges: number, stemRanges: number, kinds: number, isSame: boolean) => void;
  readonly markThings: () => void;
  readonly listRays: () => number;
  readonly makeOldRoom: (hits: number, runs: number) => void;
  readonly mergeRuns: (found: number, left: number, low: number, columns: number, rows: number) => number;
}

/** Ranges of entries that are 1, as first and end (excluded). */
function rangesOf(flags: ArrayLike<number>, first: number, end: number): [number, number][] {
  const ranges: [number, number][] = [];
  for (let at = first; at < end; at++) {
    const last = ranges.at(-1);
    if (flags[at] !== 1) continue;
    if (last?.[1] === at - first) last[1]++;
    else ranges.push([at - first, at - first + 1]);
  }
  return ranges;
}

function loadCommon(kernel: RetraceExports, scene: LatticeScene, { kindAfter, isCome, gone }: Common): void {
  const { bladeCount, stemCount, surface } = scene;
  const isMarked = surface.map((s) => isCome[s] as number);
  const blades = rangesOf(isMarked, 0, bladeCount);
  const stems = rangesOf(isMarked, bladeCount, bladeCount + stemCount);
  if (gone.bladeCount > 0) blades.push([bladeCount, bladeCount + gone.bladeCount]);
  if (gone.stemCount > 0) stems.push([stemCount, stemCount + gone.stemCount]);
  const codes = codesAfter(kindAfter);
  kernel.setUpRetrace(blades.length, stems.length, kindAfter.length, codes === null);
  const { buffer } = kernel.memory;
  new Int32Array(buffer, kernel.rangeAt.value).set([...blades, ...stems].flat());
  if (codes !== null) new Int32Array(buffer, kernel.codeAfterAt.value).set(codes);
}

/** Finds what the module leaves to others: triangles, and stems seen end-on. */
function makeRest(kernel: RetraceExports, scene: LatticeScene, { gone, come }: Common) {
  const { bladeCount } = scene;
  const stem = new Float64Array(scene.stem.length + gone.stem.length);
  stem.set(scene.stem);
  stem.set(gone.stem, scene.stem.length);
  const castEndOn = makeEndOnCaster({ ...scene, bladeCount, stem });
  const [ofChanged, ofAll] = [
    [makeTriangleCaster(gone), makeTriangleCaster(come)],
    [makeTriangleCaster(scene)],
  ];
  const hasTriangles = scene.triangleCount + gone.triangleCount > 0;
  const hits = new Hits();
  const add = (triangles: typeof ofAll, sweepOf: () => Sweep): void => {
    hits.count = 0;
    if (kernel.endOnCount.value > 0) {
      const endOn = new Int32Array(kernel.memory.buffer, kernel.endOnAt.value, kernel.endOnCount.value);
      castEndOn(endOn.slice(), sweepOf(), hits);
    }
    if (hasTriangles) for (const cast of triangles) cast(sweepOf(), hits);
    addHits(kernel, hits);
  };
  return {
    ofChanged: (sweepOf: () => Sweep) => add(ofChanged, sweepOf),
    ofAll: (sweepOf: () => Sweep) => add(ofAll, sweepOf),
  };
}

/** The rays that the module follows. */
function sweepIn(kernel: RetraceExports, lattice: Lattice): Sweep {
  const { buffer } = kernel.memory;
  const { columns, rows } = lattice;
  return {
    lattice,
    followed: {
      left: new Int32Array(buffer, kernel.spanLeftAt.value, rows),
      right: new Int32Array(buffer, kernel.spanRightAt.value, rows),
      isSparse: true,
      ray: new Int32Array(buffer, kernel.followedAt.value, rows * columns),
    },
  };
}

/** Hands over a direction as it was and takes it as it is. */
function makeMerge(kernel: RetraceExports, viewOf: () => Int32Array, wave: LeafWave, into: Collected) {
  const { hitKind, hitStart, runRay, runStart } = wave;
  return (d: number, found: number): void => {
    const [from, end] = [hitStart[d] as number, hitStart[d + 1] as number];
    const [first, last] = [runStart[d] as number, runStart[d + 1] as number];
    kernel.makeOldRoom(end - from, last - first);
    const before = viewOf();
    before.set(hitKind.subarray(from, end), kernel.oldHitAt.value / 4);
    before.set(runRay.subarray(first, last), kernel.oldRayAt.value / 4);
    const { left, low, columns, rows } = windowOf(wave, d);
    const hits = kernel.mergeRuns(found, left, low, columns, rows);
    const [runs, now] = [kernel.mergedRuns.value, viewOf()];
    const [hitAt, rayAt] = [kernel.mergedHitAt.value / 4, kernel.mergedRayAt.value / 4];
    into.reserve(hits, runs);
    into.hit.set(now.subarray(hitAt, hitAt + hits), into.count);
    into.ray.set(now.subarray(rayAt, rayAt + runs), into.runs);
    into.count += hits;
    into.runs += runs;
  };
}

function simdRetracer(kernel: RetraceExports, scene: LatticeScene, common: Common): LeafRetracer {
  load(kernel, scene, common.gone);
  loadBalls(kernel, scene);
  loadCommon(kernel, scene, common);
  const rest = makeRest(kernel, scene, common);
  const [viewOf, wholeSweep] = [makeView(kernel), makeWholeSweep()];
  return (wave, into) => {
    const merge = makeMerge(kernel, viewOf, wave, into);
    return (direction, lattice) => {
      aim(kernel, lattice);
      kernel.markThings();
      rest.ofChanged(() => wholeSweep(lattice));
      const rays = kernel.listRays();
      kernel.cast(true);
      rest.ofAll(() => sweepIn(kernel, lattice));
      kernel.makeRayRoom(rays);
      kernel.sort(rays);
      merge(direction, kernel.collect(rays));
    };
  };
}

/** By WebAssembly where the platform has it and there are no clouds; the same runs either way. */
export const fastestRetracer: MakeLeafRetracer = (scene, common) => {
  const hasClouds = scene.clouds.length > 0 || common.isCloudChanged;
  const kernel = hasClouds ? null : simdInstance<RetraceExports>();
  return kernel === null ? retracerWith(fastestCaster)(scene, common) : simdRetracer(kernel, scene, common);
};
