/** Tracing a tree in a pot that is turned: each direction meets what stands around it in one of its poses. */
import type { Surface } from '../../geometry/surface.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import { turnAboutUpright } from '../../geometry/world.ts';
import type { Direction } from '../directions.ts';
import { poseDeg } from '../sky/turns.ts';
import type { MakeTracer } from '../tracer.ts';
import { parallelBeamTracer } from './parallelBeam.ts';

/** Directions as a tree that is left as it stands has them, sky and surroundings being turned the other way. */
export interface PosedDirections {
  readonly directions: readonly Direction[];
  /** Pose by the vector of such a direction, that very array. */
  readonly poseOf: (toSky: Vec3) => number;
}

/** Throws on a direction without a pose. */
export function posed(directions: readonly Direction[]): PosedDirections {
  const poses = new Map<Vec3, number>();
  const turned = directions.map((direction): Direction => {
    const { pose } = direction;
    if (pose === undefined) {
      throw new Error(
        `posed: a direction needs a pose, got ${direction.kind} cell ${direction.cell} without`,
      );
    }
    const toSky = turnAboutUpright(direction.toSky, -poseDeg(pose));
    poses.set(toSky, pose);
    return { ...direction, toSky };
  });
  const poseOf = (toSky: Vec3): number => {
    const pose = poses.get(toSky);
    if (pose === undefined) throw new Error(`posed: no such direction, got [${toSky.join(', ')}]`);
    return pose;
  };
  return { directions: turned, poseOf };
}

/**
 * Traces among the surfaces of the pose that a direction is of. Receivers and directions are as the tree at rest has them.
 * @param poses surfaces in each pose: the same things in the same order, turned about the tree
 */
export const posedTracer =
  (
    poses: readonly (readonly Surface[])[],
    { poseOf }: PosedDirections,
    makeTracer: MakeTracer = parallelBeamTracer,
  ): MakeTracer =>
  (_, receivers) => {
    const traces = poses.map((surfaces) => makeTracer(surfaces, receivers));
    return (toSky, crossing) => {
      traces[poseOf(toSky)]?.(toSky, crossing);
    };
  };

/** The wave with its directions as they are in the world. */
export function* inWorld<W extends { readonly directions: readonly Direction[] }>(
  steps: Generator<number, W, void>,
  directions: readonly Direction[],
): Generator<number, W, void> {
  return { ...(yield* steps), directions };
}
