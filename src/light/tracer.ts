/** The contract of both tracers. */
import type { Receiver, Surface } from '../geometry/surface.ts';
import type { Vec3 } from '../geometry/vec.ts';

/**
 * Called for every crossing of a ray from a receiver on its way to the sky. Blades, stems and clouds are
 * crossed once at most; a mesh once for each of its triangles that is met.
 * @param receiver index into the receivers
 * @param surface index into the surfaces
 * @param passedShare share of the light that gets through at this crossing: the surface's transmittance, or
 * for a cloud exp(-extinction x path inside it)
 */
export type Crossing = (receiver: number, surface: number, passedShare: number) => void;

/**
 * Follows the rays from the receivers towards one direction of the sky and reports **every** surface each
 * passes, in no order. Left out are rays that leave behind a one-sided receiver (they bring it no light) and
 * a receiver's own surface, by index and never by an offset.
 *
 * What counts as met, for both tracers: only points of the ray ahead of the receiver. A receiver inside
 * a stem is shaded by it; one inside a cloud sees the rest of the path through it. Blades and triangles seen edge-on
 * (within 1e-9 of it, as sine) are met by no ray. A receiver in the very plane of a sheet must name it as its own.
 * @param toSky unit vector towards the light; may point below the level
 */
export type TraceDirection = (toSky: Vec3, crossing: Crossing) => void;

/** Prepares a scene for tracing; the scene is not changed. Throws on a scene that is not sound (`checkScene`). */
export type MakeTracer = (surfaces: readonly Surface[], receivers: readonly Receiver[]) => TraceDirection;

/** Sine of the angle to the light at and under which a flat thing is seen edge-on and casts no shade. */
export const edgeOnSine = 1e-9;
