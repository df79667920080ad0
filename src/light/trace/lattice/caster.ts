/** All rays of one lattice at once: the contract of both casters, and the plain one. */
import { makeBladeCaster } from './blades.ts';
import { dimByCloud } from './clouds.ts';
import { type Collected, collect, fateOf } from './collect.ts';
import { HitSorter, Hits, type SortedHits } from './hits.ts';
import type { Lattice } from './lattice.ts';
import type { LatticeScene } from './scene.ts';
import { makeStemCaster } from './stems.ts';
import { Followed, type Sweep } from './sweep.ts';
import { makeTriangleCaster } from './triangles.ts';

export interface LatticeCaster {
  /** Finds the hits of all rays. The arrays are used again by the next call. */
  readonly cast: (lattice: Lattice) => SortedHits;
  /** Adds what the leaves need to know of the hits of a sweep. */
  readonly collect: (sweep: Sweep, into: Collected) => void;
}

export type MakeLatticeCaster = (scene: LatticeScene) => LatticeCaster;

/** What clouds let through to each hit; null without clouds. */
export function cloudShares(
  { clouds }: LatticeScene,
  lattice: Lattice,
  hits: SortedHits,
): Float64Array | null {
  if (clouds.length === 0) return null;
  const shares = new Float64Array(hits.start[lattice.columns * lattice.rows] as number).fill(1);
  for (const cloud of clouds) dimByCloud(cloud, lattice, hits, shares);
  return shares;
}

/** Sweeps of whole lattices; each is good until the next is asked for. */
export function makeWholeSweep(): (lattice: Lattice) => Sweep {
  const followed = new Followed();
  return (lattice) => {
    followed.setAll(lattice);
    return { lattice, followed };
  };
}

export const plainCaster: MakeLatticeCaster = (scene) => {
  const casts = [makeBladeCaster(scene), makeStemCaster(scene), makeTriangleCaster(scene)];
  const [hits, sorter, fate, wholeSweep] = [new Hits(), new HitSorter(), fateOf(scene), makeWholeSweep()];
  const castSweep = (sweep: Sweep): SortedHits => {
    hits.count = 0;
    for (const find of casts) find(sweep, hits);
    return sorter.sort(hits, sweep.lattice.columns * sweep.lattice.rows);
  };
  return {
    cast: (lattice) => castSweep(wholeSweep(lattice)),
    collect: (sweep, into) => {
      const { lattice } = sweep;
      const sorted = castSweep(sweep);
      const shares = cloudShares(scene, lattice, sorted);
      collect(scene, fate, sorted, lattice.columns * lattice.rows, shares, into);
    },
  };
};
