/** Brings a wave of leaf light up to date after a part of the scene has moved: only rays through that part are traced again. */
import type { Surface } from '../../geometry/surface.ts';
import type { LeafWave } from '../leafLedger.ts';
import { type SceneChange, sceneChange } from './change.ts';
import { makeBladeCaster } from './lattice/blades.ts';
import { type LatticeCaster, type MakeLatticeCaster, makeWholeSweep } from './lattice/caster.ts';
import { Collected } from './lattice/collect.ts';
import { Hits } from './lattice/hits.ts';
import type { Lattice } from './lattice/lattice.ts';
import { RayList, rayNumbers } from './lattice/part.ts';
import { type LatticeScene, makeLatticeScene } from './lattice/scene.ts';
import { fastestCaster } from './lattice/simdCaster.ts';
import { makeStemCaster } from './lattice/stems.ts';
import { Followed } from './lattice/sweep.ts';
import { makeTriangleCaster } from './lattice/triangles.ts';
import { checkLeafWave, directionsAStep, isDark, LeafWaveRecord, latticeFor } from './leafWave.ts';
import { OldRuns } from './oldRuns.ts';

interface Scene {
  readonly surfaces: readonly Surface[];
  /** Group of each surface, -1 for what gathers no light. */
  readonly group: Int32Array;
}

export interface RetraceLeafWaveInput extends Scene {
  readonly groupCount: number;
  /** Owners run from 0 to ownerCount - 1. */
  readonly ownerCount: number;
  /** The scene that `wave` was traced of; what the two have in common is taken from that wave. */
  readonly before: Scene;
  readonly wave: LeafWave;
  /** `sceneChange(before.surfaces, surfaces)`, where it is known already. */
  readonly change?: SceneChange;
}

/** Where kinds of the wave before are in the one after, and what is not in both. */
interface Common {
  readonly kindAfter: Int32Array;
  /** Surfaces as scenes of their own, without groups. */
  readonly gone: LatticeScene;
  readonly come: LatticeScene;
  readonly isCloudChanged: boolean;
}

/** Looks up kinds by what they are. */
function kindFinder({ kindGroup, kindOwner, kindShare }: LeafWave | LatticeScene) {
  const kinds = new Map(
    Array.from(kindGroup, (g, k) => [`${g} ${kindOwner[k]} ${kindShare[k]}`, k] as const),
  );
  return ({ owner, optics }: Surface, group: number): number =>
    kinds.get(`${Math.max(-1, group)} ${owner} ${optics.transmittance}`) ?? -1;
}

const sceneOf = (surfaces: readonly Surface[], { masks }: LatticeScene): LatticeScene =>
  makeLatticeScene({ surfaces, group: new Int32Array(surfaces.length).fill(-1), groupCount: 0 }, masks);

/** A surface that is as it was but gathers light for another group than its like counts as changed. */
function commonOf(input: RetraceLeafWaveInput, scene: LatticeScene): Common {
  const { before, wave, surfaces, group } = input;
  const { surfaceBefore } = input.change ?? sceneChange(before.surfaces, surfaces);
  const [kindBefore, kindNow] = [kindFinder(wave), kindFinder(scene)];
  const kindAfter = new Int32Array(wave.kindGroup.length).fill(-1);
  const stays = new Uint8Array(before.surfaces.length);
  const come = surfaces.filter((surface, i) => {
    const was = surfaceBefore[i] as number;
    if (was < 0) return true;
    const isCloud = surface.shape === 'cloud';
    const groupBefore = before.group[was] as number;
    const from = kindBefore(before.surfaces[was] as Surface, groupBefore);
    const to = kindNow(surface, group[i] as number);
    if (!isCloud && from >= 0) {
      if (kindAfter[from] === -1 && groupBefore >= 0 === (group[i] as number) >= 0) kindAfter[from] = to;
      if (kindAfter[from] !== to) return true;
    }
    stays[was] = 1;
    return false;
  });
  const gone = before.surfaces.filter((_, i) => stays[i] === 0);
  const [comeScene, goneScene] = [sceneOf(come, scene), sceneOf(gone, scene)];
  const isCloudChanged = comeScene.clouds.length + goneScene.clouds.length > 0;
  return { kindAfter, gone: goneScene, come: comeScene, isCloudChanged };
}

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

/** Follows listed rays, or all, and nothing else. */
function makeFollower(scene: LatticeScene, caster: LatticeCaster) {
  const [followed, wholeSweep] = [new Followed(), makeWholeSweep()];
  const fresh = new Collected(scene.clouds.length > 0);
  return {
    all: (lattice: Lattice): Collected => {
      fresh.empty();
      caster.collect(wholeSweep(lattice), fresh);
      return fresh;
    },
    some: (rays: RayList, lattice: Lattice): Collected => {
      fresh.empty();
      if (rays.count === 0) return fresh;
      const part = rays.partOf(lattice);
      const [numberIn, numberOf] = [rayNumbers(lattice, part), rayNumbers(part, lattice)];
      followed.setNone(part);
      for (let k = 0; k < rays.count; k++) followed.add(numberIn(rays.ray[k] as number), part);
      caster.collect({ lattice: part, followed }, fresh);
      for (let run = 0; run < fresh.runs; run++) fresh.ray[run] = numberOf(fresh.ray[run] as number);
      return fresh;
    },
  };
}

/** As `retraceLeafWave`, handing over after every 16 directions with the share done, 0 to 1. */
export function* retraceLeafWaveSteps(
  input: RetraceLeafWaveInput,
  makeCaster: MakeLatticeCaster = fastestCaster,
): Generator<number, LeafWave, void> {
  const { wave } = input;
  const { directions, spacingM, seed } = wave;
  const whole = { ...input, directions, spacingM, seed, wave: wave.wave };
  checkLeafWave(whole);
  const scene = makeLatticeScene(input);
  const record = new LeafWaveRecord(scene, whole);
  if (isDark(scene)) return record.finish();
  const { kindAfter, gone, come, isCloudChanged } = commonOf(input, scene);
  const markers = [makeMarker(gone), makeMarker(come)];
  const [follower, old] = [makeFollower(scene, makeCaster(scene)), new OldRuns(wave, kindAfter)];
  const rays = new RayList();
  record.collected.reserve(1.1 * wave.hitKind.length, 1.1 * wave.runRay.length);
  for (const [d, direction] of directions.entries()) {
    if (d > 0 && d % directionsAStep === 0) yield d / directions.length;
    const lattice = latticeFor(scene, direction, whole);
    rays.count = 0;
    if (isCloudChanged) record.collected.append(follower.all(lattice));
    else {
      for (const mark of markers) mark(lattice, rays);
      rays.close();
      old.mergeWith(follower.some(rays, lattice), { direction: d, lattice, rays }, record.collected);
    }
    record.close(d, lattice);
  }
  return record.finish();
}

/**
 * What `traceLeafWave` of the scene after gives, entry by entry, with the directions, spacing, seed and number of a wave
 * traced of the scene before. Throws as that does.
 */
export function retraceLeafWave(input: RetraceLeafWaveInput, makeCaster?: MakeLatticeCaster): LeafWave {
  const steps = retraceLeafWaveSteps(input, makeCaster);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
