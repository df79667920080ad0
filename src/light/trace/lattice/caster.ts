/** All rays of one lattice at once: the contract of both casters, and the plain one. */
import { makeBladeCaster } from './blades.ts';
import { dimByCloud } from './clouds.ts';
import { Collected, collect, fateOf } from './collect.ts';
import { HitSorter, Hits, type SortedHits } from './hits.ts';
import type { Lattice } from './lattice.ts';
import type { LatticeScene } from './scene.ts';
import { makeStemCaster } from './stems.ts';
import { makeTriangleCaster } from './triangles.ts';

export interface LatticeCaster {
  /** Finds the hits of all rays. The arrays are used again by the next call. */
  readonly cast: (lattice: Lattice) => SortedHits;
  /** Casts, and adds what the leaves need to the hits collected; returns how many there are now. */
  readonly collect: (lattice: Lattice) => number;
  /** Copies, cut to length; see `LeafWave` for the shapes. */
  readonly collected: () => { readonly hitKind: Int32Array; readonly hitShare: Float32Array | null };
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

export const cutToLength = ({ hit, share, count }: Collected): ReturnType<LatticeCaster['collected']> => ({
  hitKind: hit.slice(0, count),
  hitShare: share === null ? null : share.slice(0, count),
});

export const plainCaster: MakeLatticeCaster = (scene) => {
  const casts = [makeBladeCaster(scene), makeStemCaster(scene), makeTriangleCaster(scene)];
  const [hits, sorter, fate] = [new Hits(), new HitSorter(), fateOf(scene)];
  const collected = new Collected(scene.clouds.length > 0);
  const cast = (lattice: Lattice): SortedHits => {
    hits.count = 0;
    for (const find of casts) find(lattice, hits);
    return sorter.sort(hits, lattice.columns * lattice.rows);
  };
  return {
    cast,
    collect: (lattice) => {
      const sorted = cast(lattice);
      const shares = cloudShares(scene, lattice, sorted);
      collect(scene, fate, sorted, lattice.columns * lattice.rows, shares, collected);
      return collected.count;
    },
    collected: () => cutToLength(collected),
  };
};
