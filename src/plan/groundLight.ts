/** The light that reaches the ground below a canopy, for the light it throws back at leaves. */
import type { FaceLight } from '../light/directions.ts';
import type { LeafWave } from '../light/leafLedger.ts';
import { faceLight } from '../light/thrown/faceLight.ts';
import { zonePatches } from '../light/thrown/groundZones.ts';
import { landingOf } from '../light/thrown/landing.ts';
import { tracerByDirection } from '../light/trace/sceneByDirection.ts';
import type { CanopyScene } from './canopyScene.ts';
import type { RayPlan } from './rayPlan.ts';

type Ground = NonNullable<CanopyScene['ground']>;

function facesOf(
  scene: CanopyScene,
  { directions, wave }: LeafWave,
  plan: RayPlan | null,
  ground: Ground,
): FaceLight {
  if (plan !== null && plan.faces !== null) return plan.faces;
  const { surfaces, ownerCount, seed } = scene;
  const input = { surfaces, patches: zonePatches(ground), directions, ownerCount, seed, wave };
  if (plan === null) return faceLight(input);
  return faceLight({ ...input, traced: plan.traced }, tracerByDirection(plan.scenes, plan.sceneOf));
}

/** A whole wave with its rays to the ground sorted by where they come down. */
export function withGround(scene: CanopyScene, wave: LeafWave, plan: RayPlan | null): LeafWave {
  const { ground, throwing } = scene;
  if (ground === null) return wave;
  const faces = facesOf(scene, wave, plan, ground);
  const traced = plan?.traced ?? wave.directions;
  const firstPatch = plan !== null && plan.faces !== null ? (throwing?.patches.length ?? 0) : 0;
  return { ...wave, landing: landingOf({ wave, traced, zones: ground, faces, firstPatch }) };
}
