/** Poses of a pot that is turned, direction by direction. */
import { random01 } from '../geometry/random.ts';
import { turnAboutUpright } from '../geometry/world.ts';
import type { CellKind, Direction } from '../light/directions.ts';
import { poseCount, poseDeg } from '../light/sky/turns.ts';

/** What the random numbers are for; no other use of a wave's seed has this word. */
const poseWord = 41;
const kindWord: Readonly<Record<CellKind, number>> = { sky: 1, beam: 2, ground: 3 };

/** The directions of a wave, each with a pose by chance; all poses are as likely, so that waves stay independent and alike. */
export const inPoses = (directions: readonly Direction[], seed: number, wave: number): readonly Direction[] =>
  directions.map((direction) => {
    const chance = random01(seed, wave, poseWord, kindWord[direction.kind], direction.cell);
    return { ...direction, pose: Math.floor(poseCount * chance) };
  });

/** The directions as a tree that is left as it stands has them, sky and surroundings being turned the other way. */
export const turnedBack = (directions: readonly Direction[]): readonly Direction[] =>
  directions.map((direction) => {
    const { pose } = direction;
    if (pose === undefined) {
      throw new Error(
        `turnedBack: a direction needs a pose, got ${direction.kind} cell ${direction.cell} without`,
      );
    }
    return { ...direction, toSky: turnAboutUpright(direction.toSky, -poseDeg(pose)) };
  });
