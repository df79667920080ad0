/** The contract of both tracers. */
import type { Vec3 } from '../geometry/vec.ts';
import type { Receiver, Surface } from '../geometry/surface.ts';

/**
 * Called once for every surface that a ray from a receiver meets on its way to the sky.
 * @param receiver index into the receivers
 * @param surface index into the surfaces
 * @param passedShare share of the light that gets through it: its transmittance, once a crossing
 */
export type Crossing = (receiver: number, surface: number, passedShare: number) => void;

/**
 * Follows the rays from all receivers towards one direction of the sky and reports **every** surface each
 * passes, in no order. A receiver's own surface is left out by index, never by an offset.
 * @param toSky unit vector towards the light; may point below the level
 */
export type TraceDirection = (toSky: Vec3, crossing: Crossing) => void;

/** Prepares a scene for tracing; the scene is not changed. */
export type MakeTracer = (surfaces: readonly Surface[], receivers: readonly Receiver[]) => TraceDirection;
