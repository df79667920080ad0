/** Brings the runs of a wave of leaf light up to date, direction by direction: the contract of both ways, and the plain one. */
import type { LeafWave } from '../leafLedger.ts';
import { makeBladeCaster } from './lattice/blades.ts';
import { type LatticeCaster, type MakeLatticeCaster, makeWholeSweep, plainCaster } from './lattice/caster.ts';
import { Collected } from './lattice/collect.ts';
import { Hits } from './lattice/hits.ts';
import type { Lattice } from './lattice/lattice.ts';
import { RayList } from './lattice/part.ts';
import type { LatticeScene } from './lattice/scene.ts';
import { makeStemCaster } from './lattice/stems.ts';
import { makeTriangleCaster } from './lattice/triangles.ts';
import { OldRuns } from './oldRuns.ts';

/** What the scenes before and after have in common. */
export interface Common {
  /** Where kinds of the wave before are in the scene after; -1 for what is not there, or in no run that stays. */
  readonly kindAfter: Int32Array;
  /** Surfaces that are not in both, as scenes of their own, without groups. */
  readonly gone: LatticeScene;
  readonly come: LatticeScene;
  /** Per surface of the scene after: 1 if it is in `come`. */
  readonly isCome: Uint8Array;
  readonly isCloudChanged: boolean;
}

/** Adds the runs of a direction as they are now. */
export type BringUpToDate = (direction: number, lattice: Lattice) => void;

/** Prepares a wave, whose runs are gathered in `into`. One wave is to be done before the next is begun. */
export type LeafRetracer = (wave: LeafWave, into: Collected) => BringUpToDate;

export type MakeLeafRetracer = (scene: LatticeScene, common: Common) => LeafRetracer;

/** Lists the rays that meet things of a scene. */
function makeMarker(scene: LatticeScene): (lattice: Lattice, into: RayList) => void {
  const casts = [makeBladeCaster(scene), makeStemCaster(scene), makeTriangleCaster(scene)];
  const [wholeSweep, hits] = [makeWholeSweep(), new Hits()];
  return (lattice, into) => {
    const sweep = wholeSweep(lattice);
    hits.count = 0;
    for (const find of casts) find(sweep, hits);
    into.add(hits.ray, hits.count);
  };
}

/** Follows listed rays, or all, and nothing else; rays of a list are then numbered in its part of the lattice. */
function makeFollower(hasClouds: boolean, caster: LatticeCaster) {
  const [wholeSweep, fresh] = [makeWholeSweep(), new Collected(hasClouds)];
  return {
    all: (lattice: Lattice): Collected => {
      fresh.empty();
      caster.collect(wholeSweep(lattice), fresh);
      return fresh;
    },
    some: ({ sweep }: RayList): Collected => {
      fresh.empty();
      if (sweep !== null) caster.collect(sweep, fresh);
      return fresh;
    },
  };
}

/** By a caster that finds the hits of single rays. */
export const retracerWith =
  (makeCaster: MakeLatticeCaster): MakeLeafRetracer =>
  (scene, { kindAfter, gone, come, isCloudChanged }) => {
    const follower = makeFollower(scene.clouds.length > 0, makeCaster(scene));
    if (isCloudChanged) return (_, into) => (_direction, lattice) => into.append(follower.all(lattice));
    const markers = [makeMarker(gone), makeMarker(come)];
    const rays = new RayList();
    return (wave, into) => {
      const old = new OldRuns(wave, kindAfter, into);
      return (direction, lattice) => {
        rays.empty();
        for (const mark of markers) mark(lattice, rays);
        rays.close(lattice);
        old.mergeWith(follower.some(rays), { direction, lattice, rays });
      };
    };
  };

/** In TypeScript alone. */
export const plainRetracer: MakeLeafRetracer = retracerWith(plainCaster);
