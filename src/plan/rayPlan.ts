/** Which directions a wave is traced along, and what each of them meets. */
import type { Surface } from '../geometry/surface.ts';
import type { Direction, FaceLight } from '../light/directions.ts';
import { waveDirections } from '../light/sky/waveDirections.ts';
import { faceLight } from '../light/thrown/faceLight.ts';
import { zonePatches } from '../light/thrown/groundZones.ts';
import { beforePatch } from '../light/thrown/patches.ts';
import { thrownDirections } from '../light/thrown/thrownDirections.ts';
import { type SceneOf, sceneFinder } from '../light/trace/sceneByDirection.ts';
import { type CanopyScene, posesOf } from './canopyScene.ts';
import { turnedBack } from './poses.ts';

export interface RayPlan {
  /** As the wave is to have them. */
  readonly directions: readonly Direction[];
  /** As they are traced, one for one. */
  readonly traced: readonly Direction[];
  readonly scenes: readonly (readonly Surface[])[];
  readonly sceneOf: SceneOf;
  /** Light on the walls' patches, then on the zones of the ground; null for a pot that is turned. */
  readonly faces: FaceLight | null;
}

/**
 * Null where all directions meet the one scene.
 * @param toWalls those along which walls are looked at for what they throw back; null leaves that out
 */
export function rayPlan(
  scene: CanopyScene,
  wave: number,
  wanted: readonly Direction[],
  toWalls: readonly Direction[] | null,
): RayPlan | null {
  const poses = posesOf(scene);
  if (poses !== null) {
    const traced = turnedBack(wanted);
    return {
      directions: wanted,
      traced,
      scenes: poses,
      sceneOf: sceneFinder(traced, ({ pose = 0 }) => pose),
      faces: null,
    };
  }
  const { throwing, surfaces, ownerCount, latitudeDeg, seed } = scene;
  if (throwing === null || toWalls === null) return null;
  const { patches, treeCount, ball } = throwing;
  const all = waveDirections({ latitudeDeg, seed, wave });
  const lit = [...patches, ...(scene.ground === null ? [] : zonePatches(scene.ground))];
  const faces = faceLight({ surfaces, patches: lit, directions: all, ownerCount, seed, wave });
  const thrown = thrownDirections({ directions: toWalls, patches, faces, ball, seed, wave });
  const directions = [...wanted, ...thrown];
  return {
    directions,
    traced: directions,
    scenes: [surfaces, ...patches.map((patch) => beforePatch(surfaces, treeCount, patch))],
    sceneOf: sceneFinder(directions, ({ thrownBy }) => (thrownBy === undefined ? 0 : 1 + thrownBy.patch)),
    faces,
  };
}
