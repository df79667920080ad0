/** Which places the sun reaches, step by step through a day. */
import { fixedOwner, type Receiver, type Surface } from '../../geometry/surface.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import { type Horizon, hiddenBy } from '../sky/horizon.ts';
import { parallelBeamTracer } from '../trace/parallelBeam.ts';
import { receiverCosine } from '../trace/wave.ts';
import type { MakeTracer } from '../tracer.ts';

export interface SunStripInput {
  readonly surfaces: readonly Surface[];
  readonly receivers: readonly Receiver[];
  /** Unit vectors towards the sun, one a step. */
  readonly toSun: readonly Vec3[];
  /** What hides the low sun; null for an open horizon. */
  readonly horizon: Horizon | null;
}

/** Entry of receiver r in step s: r * steps + s. */
export interface SunStrip {
  readonly steps: number;
  /**
   * Share of the sun that comes straight to the receiver: 0 behind a leaf or wood of the tree, or anything solid; 1 with nothing in the
   * way; between them behind what has gaps and stands for good, such as a neighbour's crown.
   */
  readonly lit: Float32Array;
  /** Share of the beam's light that reaches it, what leaves let through and scatter on counted too. */
  readonly passed: Float32Array;
}

const stepsAtOnce = 8;

/** Hands over after every 8 steps with the share done, 0 to 1. A one-sided receiver with the sun behind it is not lit. */
export function* sunStripSteps(
  { surfaces, receivers, toSun, horizon }: SunStripInput,
  makeTracer: MakeTracer = parallelBeamTracer,
): Generator<number, SunStrip, void> {
  const trace = makeTracer(surfaces, receivers);
  const steps = toSun.length;
  const lit = new Float32Array(receivers.length * steps);
  const passed = new Float32Array(receivers.length * steps);
  for (const [s, toSky] of toSun.entries()) {
    if (s > 0 && s % stepsAtOnce === 0) yield s / steps;
    if (horizon !== null && hiddenBy(horizon, toSky) !== null) continue;
    receivers.forEach((receiver, r) => {
      const faces = receiverCosine(receiver, toSky) > 0 ? 1 : 0;
      lit[r * steps + s] = faces;
      passed[r * steps + s] = faces;
    });
    trace(toSky, (receiver, surface, share) => {
      const at = receiver * steps + s;
      const straight = (surfaces[surface] as Surface).owner === fixedOwner ? share : 0;
      lit[at] = (lit[at] as number) * straight;
      passed[at] = (passed[at] as number) * share;
    });
  }
  return { steps, lit, passed };
}
