/** All blockers of every ray, on a tree of 1,000 leaves: ours and a general ray tracer's, on the same rays. */
import type { Receiver } from '../src/geometry/surface.ts';
import type { Vec3 } from '../src/geometry/vec.ts';
import type { Direction } from '../src/light/directions.ts';
import { waveDirections } from '../src/light/sky/waveDirections.ts';
import {
  type LatticeCaster,
  type MakeLatticeCaster,
  makeWholeSweep,
  plainCaster,
} from '../src/light/trace/lattice/caster.ts';
import { Collected } from '../src/light/trace/lattice/collect.ts';
import type { Lattice } from '../src/light/trace/lattice/lattice.ts';
import { type LatticeScene, makeLatticeScene } from '../src/light/trace/lattice/scene.ts';
import { fastestCaster } from '../src/light/trace/lattice/simdCaster.ts';
import { latticeFor } from '../src/light/trace/leafWave.ts';
import { parallelBeamTracer, plainBeamTracer } from '../src/light/trace/parallelBeam.ts';
import type { MakeTracer } from '../src/light/tracer.ts';
import { median, timeMs } from './clock.ts';
import { makePeer } from './peer.ts';
import { vaseTree } from './vaseTree.ts';

const [leaves, spacingM, rounds] = [1000, 0.03, 7];

/** Every eighth direction of a wave. */
const someDirections = (): readonly Direction[] =>
  waveDirections({ latitudeDeg: 43.7, seed: 3, wave: 0 }).filter((_, d) => d % 8 === 0);

interface LeafRays {
  readonly points: Float64Array;
  readonly onSurface: Int32Array;
  readonly blockers: number;
}

/** The hits on leaves as points in space, and how many things lie before them. */
function leafRays(scene: LatticeScene, caster: LatticeCaster, lattice: Lattice): LeafRays {
  const { start, ahead, thing } = caster.cast(lattice);
  const { frame, right, top, columns, left, low } = lattice;
  const [points, onSurface]: [number[], number[]] = [[], []];
  let blockers = 0;
  for (let ray = 0; ray < columns * lattice.rows; ray++) {
    const r = right + (left + (ray % columns)) * spacingM;
    const t = top + (low + Math.floor(ray / columns)) * spacingM;
    for (let k = start[ray] as number; k < (start[ray + 1] as number); k++) {
      const it = thing[k] as number;
      if ((scene.kindGroup[scene.kind[it] as number] as number) < 0) continue;
      const a = ahead[k] as number;
      for (const x of [0, 1, 2] as const)
        points.push(r * frame.right[x] + t * frame.top[x] + a * frame.ahead[x]);
      onSurface.push(scene.surface[it] as number);
      blockers += k - (start[ray] as number);
    }
  }
  return { points: Float64Array.from(points), onSurface: Int32Array.from(onSurface), blockers };
}

/** A twentieth of the rays is enough for the slow one. */
function thinned({ points, onSurface }: LeafRays): LeafRays {
  const kept = Array.from(onSurface.keys()).filter((k) => k % 20 === 0);
  const some = Float64Array.from(kept.flatMap((k) => Array.from(points.subarray(3 * k, 3 * k + 3))));
  return { points: some, onSurface: Int32Array.from(kept, (k) => onSurface[k] as number), blockers: 0 };
}

function gridTrace(
  tree: ReturnType<typeof vaseTree>,
  directions: readonly Direction[],
  makeTracer: MakeTracer,
): () => number {
  const receivers = tree.surfaces.flatMap((s, onSurface): Receiver[] => {
    if (s.shape !== 'blade') return [];
    const point = s.origin.map((x, k) => x + 0.4 * (s.along[k] as number)) as unknown as Vec3;
    return [{ point, normal: [0, 1, 0], sides: 'both', onSurface }];
  });
  const trace = makeTracer(tree.surfaces, receivers);
  return () => {
    for (const { toSky } of directions) trace(toSky, () => {});
    return receivers.length * directions.length;
  };
}

export function measureRate(): string {
  const tree = vaseTree(leaves, 7);
  const directions = someDirections();
  const scene = makeLatticeScene({ ...tree, groupCount: tree.shootCount });
  const lattices = directions.map((d) => latticeFor(scene, d, { spacingM, seed: 3, wave: 0 }));
  const probe = plainCaster(scene);
  const rays = lattices.map((lattice) => leafRays(scene, probe, lattice));
  const few = rays.map(thinned);
  const peer = makePeer(tree.surfaces);
  const samples = rays.reduce((sum, { onSurface }) => sum + onSurface.length, 0);
  const fewSamples = few.reduce((sum, { onSurface }) => sum + onSurface.length, 0);
  const blockers = rays.reduce((sum, r) => sum + r.blockers, 0) / samples;
  let met = 0;
  const grid = gridTrace(tree, directions, parallelBeamTracer);
  const plainGrid = gridTrace(tree, directions, plainBeamTracer);
  const gridSamples = grid();
  const work: Record<string, Work> = {
    'lattice, WebAssembly': { samples, run: () => castAll(fastestCaster, scene, lattices), ms: [] },
    'lattice, TypeScript': { samples, run: () => castAll(plainCaster, scene, lattices), ms: [] },
    'point grid, WebAssembly (own rays)': { samples: gridSamples, run: grid, ms: [] },
    'point grid, TypeScript (own rays)': { samples: gridSamples, run: plainGrid, ms: [] },
    'three-mesh-bvh': {
      samples: fewSamples,
      run: () => {
        met = few.reduce(
          (sum, r, d) => sum + peer.trace(r.points, r.onSurface, directions[d]?.toSky as Vec3),
          0,
        );
      },
      ms: [],
    },
  };
  for (let round = 0; round < rounds; round++) {
    for (const one of Object.values(work)) one.ms.push(timeMs(one.run));
  }
  const rows = ratios(work);
  return [
    '## All blockers of every ray on leaves',
    '',
    `${leaves} leaves, rays ${spacingM * 100} cm apart, ${directions.length} directions, ${samples} samples (one in 20 of them for three-mesh-bvh, ${peer.triangleCount} triangles). Blockers a sample: ${blockers.toFixed(2)}; by three-mesh-bvh ${(met / fewSamples).toFixed(2)}, where a ray meets a stem going in and coming out. Medians of ${rounds} interleaved rounds; with preparing ours, without building the tree of the other.`,
    '',
    '| engine | million samples a second | times three-mesh-bvh |',
    '|---|---:|---:|',
    ...rows,
    '',
    'Goals: 50 times with WebAssembly, 30 times in TypeScript alone.',
    '',
  ].join('\n');
}

interface Work {
  readonly samples: number;
  readonly run: () => void;
  readonly ms: number[];
}

function ratios(work: Readonly<Record<string, Work>>): string[] {
  const perSecond = (name: string): number => {
    const { samples, ms } = work[name] as Work;
    return samples / median(ms) / 1000;
  };
  const base = perSecond('three-mesh-bvh');
  return Object.keys(work).map(
    (name) => `| ${name} | ${perSecond(name).toFixed(2)} | ${(perSecond(name) / base).toFixed(0)} |`,
  );
}

function castAll(makeCaster: MakeLatticeCaster, scene: LatticeScene, lattices: readonly Lattice[]): void {
  const [caster, sweep, into] = [makeCaster(scene), makeWholeSweep(), new Collected(false)];
  for (const lattice of lattices) caster.collect(sweep(lattice), into);
}
