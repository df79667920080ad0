/** Brings a wave of leaf light up to date after a part of the scene has moved: only rays through that part are traced again. */
import type { Surface } from '../../geometry/surface.ts';
import type { LeafWave } from '../leafLedger.ts';
import { type SceneChange, sceneChange } from './change.ts';
import { type LatticeScene, makeLatticeScene } from './lattice/scene.ts';
import type { Common, LeafRetracer, MakeLeafRetracer } from './leafRetracer.ts';
import { checkLeafWave, directionsAStep, isDark, LeafWaveRecord, latticeFor } from './leafWave.ts';
import { fastestRetracer } from './simdRetracer.ts';

/** Hits after a change over those before; room for more is made when they are there. */
const expectedGrowth = 1.03;

interface Scene {
  readonly surfaces: readonly Surface[];
  /** Group of each surface, -1 for what gathers no light. */
  readonly group: Int32Array;
}

export interface LeafRetracingInput extends Scene {
  readonly groupCount: number;
  /** Owners run from 0 to ownerCount - 1. */
  readonly ownerCount: number;
  /** The scene that the waves were traced of; what the two have in common is taken from those. */
  readonly before: Scene;
  /** `sceneChange(before.surfaces, surfaces)`, where it is known already. */
  readonly change?: SceneChange;
}

export interface RetraceLeafWaveInput extends LeafRetracingInput {
  readonly wave: LeafWave;
}

type Kinds = Pick<LeafWave, 'kindGroup' | 'kindOwner' | 'kindShare'>;

/** Looks up kinds by what they are. */
function kindFinder({ kindGroup, kindOwner, kindShare }: Kinds) {
  const kinds = new Map(
    Array.from(kindGroup, (g, k) => [`${g} ${kindOwner[k]} ${kindShare[k]}`, k] as const),
  );
  return ({ owner, optics }: Surface, group: number): number =>
    kinds.get(`${Math.max(-1, group)} ${owner} ${optics.transmittance}`) ?? -1;
}

const sceneOf = (surfaces: readonly Surface[], { masks }: LatticeScene): LatticeScene =>
  makeLatticeScene({ surfaces, group: new Int32Array(surfaces.length).fill(-1), groupCount: 0 }, masks);

/** A surface that is as it was but gathers light for another group than its like counts as changed. */
function commonOf(input: LeafRetracingInput, kinds: Kinds, scene: LatticeScene): Common {
  const { before, surfaces, group } = input;
  const { surfaceBefore } = input.change ?? sceneChange(before.surfaces, surfaces);
  const [kindBefore, kindNow] = [kindFinder(kinds), kindFinder(scene)];
  const kindAfter = new Int32Array(kinds.kindGroup.length).fill(-1);
  const stays = new Uint8Array(before.surfaces.length);
  const comes = (surface: Surface, i: number): boolean => {
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
  };
  const isCome = Uint8Array.from(surfaces, (surface, i) => (comes(surface, i) ? 1 : 0));
  const come = surfaces.filter((_, i) => isCome[i] === 1);
  const gone = before.surfaces.filter((_, i) => stays[i] === 0);
  const [comeScene, goneScene] = [sceneOf(come, scene), sceneOf(gone, scene)];
  const isCloudChanged = comeScene.clouds.length + goneScene.clouds.length > 0;
  return { kindAfter, gone: goneScene, come: comeScene, isCome, isCloudChanged };
}

const isSame = (a: ArrayLike<number>, b: ArrayLike<number>): boolean =>
  a.length === b.length && Array.from(a).every((value, i) => value === b[i]);

const haveSameKinds = (a: Kinds, b: Kinds): boolean =>
  isSame(a.kindGroup, b.kindGroup) && isSame(a.kindOwner, b.kindOwner) && isSame(a.kindShare, b.kindShare);

/**
 * Brings waves of one scene up to date, one after another: what does not depend on the wave is prepared once. The steps are those of
 * `retraceLeafWaveSteps`; one wave is to be done before the next is begun.
 */
export function leafRetracing(
  input: LeafRetracingInput,
  makeRetracer: MakeLeafRetracer = fastestRetracer,
): (wave: LeafWave) => Generator<number, LeafWave, void> {
  const scene = makeLatticeScene(input);
  let prepared: { readonly kinds: Kinds; readonly retracer: LeafRetracer } | null = null;
  const retracerFor = (kinds: Kinds): LeafRetracer => {
    if (prepared === null || !haveSameKinds(prepared.kinds, kinds)) {
      prepared = { kinds, retracer: makeRetracer(scene, commonOf(input, kinds, scene)) };
    }
    return prepared.retracer;
  };
  return function* (wave) {
    const { directions, spacingM, seed } = wave;
    const whole = { ...input, directions, spacingM, seed, wave: wave.wave };
    checkLeafWave(whole);
    const record = new LeafWaveRecord(scene, whole);
    if (isDark(scene)) return record.finish();
    const { collected } = record;
    collected.reserve(expectedGrowth * wave.hitKind.length, expectedGrowth * wave.runRay.length);
    const bringUpToDate = retracerFor(wave)(wave, collected);
    for (const [d, direction] of directions.entries()) {
      if (d > 0 && d % directionsAStep === 0) yield d / directions.length;
      const lattice = latticeFor(scene, direction, whole);
      bringUpToDate(d, lattice);
      record.close(d, lattice);
    }
    // Hardly longer than they need be; a copy would take as long as a tenth of the work.
    return record.finish(collected.filled());
  };
}

/** As `retraceLeafWave`, handing over after every 16 directions with the share done, 0 to 1. */
export const retraceLeafWaveSteps = (
  input: RetraceLeafWaveInput,
  makeRetracer?: MakeLeafRetracer,
): Generator<number, LeafWave, void> => leafRetracing(input, makeRetracer)(input.wave);

/**
 * What `traceLeafWave` of the scene after gives, entry by entry, with the directions, spacing, seed and number of a wave
 * traced of the scene before. Throws as that does.
 */
export function retraceLeafWave(input: RetraceLeafWaveInput, makeRetracer?: MakeLeafRetracer): LeafWave {
  const steps = retraceLeafWaveSteps(input, makeRetracer);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
