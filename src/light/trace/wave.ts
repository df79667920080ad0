/** Traces one wave of the ledger: every receiver towards every direction given. */
import type { Receiver, Surface } from '../../geometry/surface.ts';
import type { Direction } from '../directions.ts';
import type { Wave } from '../ledger.ts';
import type { MakeTracer } from '../tracer.ts';
import { Crossings, isFixedCloud } from './crossings.ts';
import { parallelBeamTracer } from './parallelBeam.ts';
import { WaveRecord } from './waveRecord.ts';

export { receiverCosine } from './waveRecord.ts';

export interface TraceWaveInput {
  readonly surfaces: readonly Surface[];
  readonly receivers: readonly Receiver[];
  readonly directions: readonly Direction[];
  /** Owners run from 0 to ownerCount - 1. */
  readonly ownerCount: number;
}

export function checkOwners(surfaces: readonly Surface[], ownerCount: number): void {
  surfaces.forEach(({ owner }, i) => {
    if (!(owner < ownerCount)) {
      throw new Error(`traceWave: owner of surface ${i} must be below ${ownerCount}, got ${owner}`);
    }
  });
}

/** Closes the list of a receiver's ray that was traced against everything, as receiver `at` of the crossings; its number. */
export function closeRay(record: WaveRecord, receiver: number, crossings: Crossings, at: number): number {
  if (!record.isLit(receiver)) return 0;
  const fixedShare = crossings.fixedShare[at] as number;
  if (fixedShare === 0) return record.closeDark();
  if (fixedShare < 1) record.lists.put(0, fixedShare);
  crossings.putOwners(at, record.lists);
  return record.close();
}

export const directionsAStep = 16;

/** As `traceWave`, handing over after every 16 directions with the share done, 0 to 1. */
export function* traceWaveSteps(
  { surfaces, receivers, directions, ownerCount }: TraceWaveInput,
  makeTracer: MakeTracer = parallelBeamTracer,
): Generator<number, Wave, void> {
  checkOwners(surfaces, ownerCount);
  const trace = makeTracer(surfaces, receivers);
  const record = new WaveRecord(directions, receivers, surfaces.some(isFixedCloud));
  const crossings = new Crossings(surfaces, receivers.length);
  for (const [d, { toSky }] of directions.entries()) {
    if (d > 0 && d % directionsAStep === 0) yield d / directions.length;
    crossings.clear();
    trace(toSky, crossings.add);
    record.begin(d);
    for (let r = 0; r < receivers.length; r++) record.list[r] = closeRay(record, r, crossings, r);
    record.end(d, crossings.cloudShare);
  }
  return record.wave();
}

/** Runs a generator of steps to its end. */
export function lastOf<Result>(steps: Generator<number, Result, void>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Traces every receiver towards every direction. A ray that something fixed and opaque ends has the list of owner 0 with share 0
 * and no other; one that brings its receiver nothing has the empty list.
 * Throws on an unsound scene (`checkScene`) and on owners past `ownerCount`.
 */
export const traceWave = (input: TraceWaveInput, makeTracer: MakeTracer = parallelBeamTracer): Wave =>
  lastOf(traceWaveSteps(input, makeTracer));
