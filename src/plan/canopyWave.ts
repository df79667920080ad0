/** One wave of light through a canopy and what stands around it. */
import type { CellLight, Direction } from '../light/directions.ts';
import type { LeafWave } from '../light/leafLedger.ts';
import type { Wave } from '../light/ledger.ts';
import { waveDirections } from '../light/sky/waveDirections.ts';
import { casterByDirection } from '../light/trace/lattice/casterByDirection.ts';
import { type TraceLeafWaveInput, traceLeafWaveSteps } from '../light/trace/leafWave.ts';
import { inWorld, tracerByDirection } from '../light/trace/sceneByDirection.ts';
import { traceWaveSteps } from '../light/trace/wave.ts';
import type { CanopyScene } from './canopyScene.ts';
import { withGround } from './groundLight.ts';
import { inPoses } from './poses.ts';
import { type RayPlan, rayPlan } from './rayPlan.ts';

/** A wave to be traced, as plain data. */
export interface WaveTask {
  /** Light at the nodes or on the leaves. */
  readonly at: 'nodes' | 'leaves';
  readonly scene: CanopyScene;
  /** Number of the wave, from 0. */
  readonly wave: number;
  /** The one light the wave is wanted for: directions that bring nothing in it are not traced. All when left out. */
  readonly onlyFor?: CellLight;
  /** For a coarse answer: of sky and beam only so many directions; without what walls throw back. */
  readonly coarse?: OneIn;
  /** The same for an answer that is to be right in the mean. */
  readonly thinned?: OneIn;
}

/** One direction of sky and beam in every so many, beginning with this one. */
export interface OneIn {
  readonly every: number;
  readonly from: number;
}

export type TracedWave<At extends WaveTask['at']> = At extends 'nodes' ? Wave : LeafWave;

/** Traces one wave. Yields the share done of it, 0 to 1. */
export function waveSteps<At extends WaveTask['at']>(
  task: WaveTask & { readonly at: At },
): Generator<number, TracedWave<At>, void>;
export function waveSteps(task: WaveTask): Generator<number, Wave | LeafWave, void> {
  return task.at === 'nodes' ? nodeWaveSteps(task) : leafWaveSteps(task);
}

function directionsOf({ scene, wave, onlyFor }: WaveTask): readonly Direction[] {
  const { latitudeDeg, seed, fixedByPose } = scene;
  const facing = waveDirections({ latitudeDeg, seed, wave });
  const all = fixedByPose === null ? facing : inPoses(facing, seed, wave);
  return onlyFor === undefined ? all : all.filter(({ kind, cell }) => (onlyFor[kind][cell] ?? 0) > 0);
}

/** The ground is never thinned out: its rays are few, and count as they are. */
function oneIn(directions: readonly Direction[], { every, from }: OneIn): readonly Direction[] {
  return directions.filter(({ kind }, d) => kind === 'ground' || d % every === from);
}

/** The nodes are level sensors, which the ground never lights. */
function nodeWaveSteps(task: WaveTask): Generator<number, Wave, void> {
  const { surfaces, receivers, ownerCount } = task.scene;
  const all = directionsOf(task).filter(({ kind }) => kind !== 'ground');
  const some = task.coarse ?? task.thinned;
  const directions = some === undefined ? all : oneIn(all, some);
  const plan = rayPlan(task.scene, task.wave, directions, task.coarse === undefined ? all : null);
  if (plan === null) return traceWaveSteps({ surfaces, receivers, directions, ownerCount });
  const input = { surfaces, receivers, directions: plan.traced, ownerCount };
  return inWorld(traceWaveSteps(input, tracerByDirection(plan.scenes, plan.sceneOf)), plan.directions);
}

/**
 * Distance of the rays in shares of the root of the mean leaf's area: about 1.4 rays reach a leaf from each direction. Our
 * choice: the error of a shoot's leaf light over eight waves is then that of its nodes' light.
 */
const spacingShare = 0.6;
/** The same for a coarse answer: a third of a ray a leaf. */
const coarseSpacingShare = 1.2;
/** Hits of a wave, at most; four bytes each. Larger trees get wider lattices and have more leaves on a shoot's share. */
const mostHits = 4e6;

function spacingM({ leafAreaM2, leafCount }: CanopyScene, directionCount: number, share: number): number {
  if (leafAreaM2 === 0) return 1;
  // Leaves at random show half their area.
  const hitsTimesM2 = (leafAreaM2 / 2) * directionCount;
  return Math.max(share * Math.sqrt(leafAreaM2 / leafCount), Math.sqrt(hitsTimesM2 / mostHits));
}

/** Groups are the canopy's leaves. */
function leafWaveSteps(task: WaveTask): Generator<number, LeafWave, void> {
  const { scene, wave, coarse } = task;
  const { surfaces, group, leafCount, ownerCount, seed } = scene;
  const all = directionsOf(task);
  const directions = coarse === undefined ? all : oneIn(all, coarse);
  const share = coarse === undefined ? spacingShare : coarseSpacingShare;
  const input = {
    surfaces,
    group,
    groupCount: leafCount,
    ownerCount,
    spacingM: spacingM(scene, directions.length, share),
    seed,
    wave,
  };
  const plan = rayPlan(scene, wave, directions, coarse === undefined ? all : null);
  const steps = plan === null ? traceLeafWaveSteps({ ...input, directions }) : plannedSteps(input, plan);
  return coarse === undefined ? withGroundSteps(scene, steps, plan) : steps;
}

function plannedSteps(
  input: Omit<TraceLeafWaveInput, 'directions'>,
  plan: RayPlan,
): Generator<number, LeafWave, void> {
  const makeCaster = casterByDirection({ ...input, scenes: plan.scenes }, plan.sceneOf);
  return inWorld(traceLeafWaveSteps({ ...input, directions: plan.traced }, makeCaster), plan.directions);
}

/** A coarse answer takes the ground as lit alike; whole waves do not. */
function* withGroundSteps(
  scene: CanopyScene,
  steps: Generator<number, LeafWave, void>,
  plan: RayPlan | null,
): Generator<number, LeafWave, void> {
  return withGround(scene, yield* steps, plan);
}
