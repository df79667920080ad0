/** The first waves of a light job: a few rays spread over the whole sky, so that a picture is there in a blink. */
import type { CellLight } from '../light/directions.ts';
import type { CanopyScene } from '../plan/canopyScene.ts';
import { type WavePair, wavePair } from './wavePair.ts';

/** Rays from nodes for a coarse answer: about 30 ms of one core. */
const wantedRays = 40_000;
/** Fewer directions than one in so many tell too little; a larger tree's first picture takes longer. */
const mostEvery = 16;
/** A tree whose first two waves are no more than this many times the coarse ones needs none. */
const leastGain = 3;

const cellsLit = (energies: Float64Array): number => energies.filter((energy) => energy > 0).length;

/**
 * Two waves of sensors and of leaves with no direction in common, so that their spread tells the doubt of the few
 * directions too. None for a tree so small that its first real waves are as quick.
 */
export function coarsePairs(scene: CanopyScene, light: CellLight): readonly WavePair[] {
  const rays = 2 * scene.receivers.length * (cellsLit(light.sky) + cellsLit(light.beam));
  if (rays < leastGain * wantedRays) return [];
  const every = Math.min(mostEvery, Math.ceil(rays / wantedRays));
  return [0, Math.floor(every / 2)].map((from) =>
    wavePair({ scene, wave: 0, onlyFor: light, coarse: { every, from } }),
  );
}
