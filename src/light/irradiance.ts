/** Light on bare geometry, without a tree, a site or a ledger. */
import type { Receiver, Surface } from '../geometry/surface.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { KeepSet } from './ledger.ts';
import { parallelBeamTracer } from './trace/parallelBeam.ts';
import { receiverCosine } from './trace/waveRecord.ts';
import type { MakeTracer } from './tracer.ts';

export interface Lamp {
  /** Unit vector towards the light. */
  readonly toSky: Vec3;
  /** What a sensor turned square to it gets, in any unit of irradiance. */
  readonly energy: number;
}

export interface IrradianceInput {
  readonly surfaces: readonly Surface[];
  readonly receivers: readonly Receiver[];
  readonly lights: readonly Lamp[];
  /** Which owners stand, entry per owner; all when left out. */
  readonly keep?: KeepSet;
}

/**
 * Irradiance of each receiver in the unit of the lights' energy: the sum over the lights of energy x cosine x shares
 * passed. Leaves (both sides): light on both faces per one-sided area. Throws on an unsound scene or light
 * and on a keep-set that leaves out an owner.
 */
export function irradiance(
  { surfaces, receivers, lights, keep }: IrradianceInput,
  makeTracer: MakeTracer = parallelBeamTracer,
): Float64Array {
  const trace = makeTracer(surfaces, receivers);
  const beyond = keep === undefined ? undefined : surfaces.find(({ owner }) => owner >= keep.length);
  if (beyond !== undefined) {
    throw new Error(`irradiance: keep needs an entry for owner ${beyond.owner}, got ${keep?.length} entries`);
  }
  const stands = surfaces.map(({ owner }) => owner === 0 || keep === undefined || keep[owner] === 1);
  const total = new Float64Array(receivers.length);
  const passed = new Float64Array(receivers.length);
  for (const { toSky, energy } of lights) {
    if (!(energy >= 0 && energy < Infinity))
      throw new Error(`irradiance: energy must be 0 or more, got ${energy}`);
    passed.fill(1);
    trace(toSky, (receiver, surface, share) => {
      if (stands[surface]) passed[receiver] = (passed[receiver] as number) * share;
    });
    receivers.forEach((receiver, r) => {
      total[r] = (total[r] as number) + energy * receiverCosine(receiver, toSky) * (passed[r] as number);
    });
  }
  return total;
}

/** A piece of sky (or ground) by its size and the direction in it that is looked along. */
export interface SkyPiece {
  readonly toSky: Vec3;
  readonly solidAngleSr: number;
}

export interface SkyViewInput {
  readonly surfaces: readonly Surface[];
  readonly receivers: readonly Receiver[];
  readonly pieces: readonly SkyPiece[];
  readonly keep?: KeepSet;
}

/**
 * Sky view factor of each receiver: light from a sky of even brightness as share of what a level sensor under open sky
 * gets by the same pieces. Weighs by the cosine, as a flat sensor does.
 */
export function skyView(
  { surfaces, receivers, pieces, keep }: SkyViewInput,
  makeTracer?: MakeTracer,
): Float64Array {
  const lights = pieces.map(({ toSky, solidAngleSr }) => ({ toSky, energy: solidAngleSr }));
  const open = pieces.reduce((sum, { toSky, solidAngleSr }) => sum + solidAngleSr * Math.max(0, toSky[1]), 0);
  if (!(open > 0)) throw new Error(`skyView: the pieces must light a level sensor, got ${open} sr of cosine`);
  const input = { surfaces, receivers, lights, ...(keep === undefined ? {} : { keep }) };
  return irradiance(input, makeTracer).map((value) => value / open);
}
