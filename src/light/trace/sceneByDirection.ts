/** Tracing in which each direction has a scene of its own among several. */
import type { Surface } from '../../geometry/surface.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import type { Direction } from '../directions.ts';
import type { MakeTracer, TraceDirection } from '../tracer.ts';
import { parallelBeamTracer } from './parallelBeam.ts';

/** Number of the scene by the vector of a direction, that very array. */
export type SceneOf = (toSky: Vec3) => number;

/** Throws, when asked, on the vector of another direction. */
export function sceneFinder(
  directions: readonly Direction[],
  numberOf: (direction: Direction) => number,
): SceneOf {
  const numbers = new Map(directions.map((direction) => [direction.toSky, numberOf(direction)]));
  return (toSky) => {
    const number = numbers.get(toSky);
    if (number === undefined) throw new Error(`sceneFinder: no such direction, got [${toSky.join(', ')}]`);
    return number;
  };
}

/**
 * Traces among the surfaces of a direction's scene. Surfaces are told by their number there, so scenes must agree in what
 * matters of a number: its owner.
 */
export const tracerByDirection =
  (
    scenes: readonly (readonly Surface[])[],
    sceneOf: SceneOf,
    makeTracer: MakeTracer = parallelBeamTracer,
  ): MakeTracer =>
  (_, receivers) => {
    const traces = new Map<number, TraceDirection>();
    return (toSky, crossing) => {
      const number = sceneOf(toSky);
      const trace = traces.get(number) ?? makeTracer(scenes[number] as readonly Surface[], receivers);
      traces.set(number, trace);
      trace(toSky, crossing);
    };
  };

/** The wave with its directions as they are in the world. */
export function* inWorld<W extends { readonly directions: readonly Direction[] }>(
  steps: Generator<number, W, void>,
  directions: readonly Direction[],
): Generator<number, W, void> {
  return { ...(yield* steps), directions };
}
