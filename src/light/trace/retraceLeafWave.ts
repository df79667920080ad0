/** Brings a wave of leaf light up to date after a part of the scene has moved: only rays through that part are traced again. */
import type { Surface } from '../../geometry/surface.ts';
import type { LeafWave } from '../leafLedger.ts';
import { type SceneChange, sceneChange } from './change.ts';
import { makeBladeLook } from './lattice/blades.ts';
import { type MakeLatticeCaster, makeWholeSweep } from './lattice/caster.ts';
import { clustersOf, findNear } from './lattice/clusters.ts';
import { Collected } from './lattice/collect.ts';
import type { Lattice } from './lattice/lattice.ts';
import { type LatticeScene, makeLatticeScene } from './lattice/scene.ts';
import { fastestCaster } from './lattice/simdCaster.ts';
import { makeStemLook } from './lattice/stems.ts';
import { Ranges, Spans } from './lattice/sweep.ts';
import { makeTriangleLook } from './lattice/triangles.ts';
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

const sceneOf = (surfaces: readonly Surface[]): LatticeScene =>
  makeLatticeScene({ surfaces, group: new Int32Array(surfaces.length).fill(-1), groupCount: 0 });

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
  const [comeScene, goneScene] = [sceneOf(come), sceneOf(gone)];
  const isCloudChanged = comeScene.clouds.length + goneScene.clouds.length > 0;
  return { kindAfter, gone: goneScene, come: comeScene, isCloudChanged };
}

/** Marks the rays that things of a scene may meet. */
function makeMarker(scene: LatticeScene): (lattice: Lattice, spans: Spans) => void {
  const looks = [makeBladeLook(scene), makeStemLook(scene), makeTriangleLook(scene)];
  const wholeSweep = makeWholeSweep(scene);
  return (lattice, spans) => {
    const sweep = wholeSweep(lattice);
    for (const look of looks) {
      look(sweep, (seen) => {
        spans.add(seen);
      });
    }
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
  const [caster, clusters, old] = [makeCaster(scene), clustersOf(scene), new OldRuns(wave, kindAfter)];
  const [spans, ranges, fresh] = [new Spans(), new Ranges(), new Collected(scene.clouds.length > 0)];
  for (const [d, direction] of directions.entries()) {
    if (d > 0 && d % directionsAStep === 0) yield d / directions.length;
    const lattice = latticeFor(scene, direction, whole);
    if (isCloudChanged) spans.setWhole(lattice);
    else {
      spans.setEmpty(lattice);
      for (const mark of markers) mark(lattice, spans);
    }
    findNear(clusters, lattice, spans, ranges);
    fresh.empty();
    if (ranges.count > 0) caster.collect({ lattice, spans, ranges }, 0, fresh);
    old.mergeWith(fresh, { direction: d, lattice, spans }, record.collected);
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
