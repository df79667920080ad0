/** Traces one wave of the ledger: every receiver towards every direction given. */
import { fixedOwner, type Receiver, type Surface } from '../../geometry/surface.ts';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import type { Direction } from '../directions.ts';
import type { Wave } from '../ledger.ts';
import type { MakeTracer } from '../tracer.ts';
import { OwnerLists } from './ownerLists.ts';
import { parallelBeamTracer } from './parallelBeam.ts';

export interface TraceWaveInput {
  readonly surfaces: readonly Surface[];
  readonly receivers: readonly Receiver[];
  readonly directions: readonly Direction[];
  /** Owners run from 0 to ownerCount - 1. */
  readonly ownerCount: number;
}

/** Crossings of one direction by things that can go, chained by receiver. */
class Crossings {
  owner = new Int32Array(1024);
  share = new Float64Array(1024);
  /** Next crossing of the same receiver; -1 ends the chain. */
  next = new Int32Array(1024);
  readonly first: Int32Array;
  count = 0;

  constructor(receiverCount: number) {
    this.first = new Int32Array(receiverCount).fill(-1);
  }

  clear(): void {
    this.first.fill(-1);
    this.count = 0;
  }

  add(receiver: number, owner: number, share: number): void {
    if (this.count === this.owner.length) this.grow();
    const at = this.count++;
    this.owner[at] = owner;
    this.share[at] = share;
    this.next[at] = this.first[receiver] as number;
    this.first[receiver] = at;
  }

  private grow(): void {
    const { owner, share, next } = this;
    this.owner = new Int32Array(2 * owner.length);
    this.share = new Float64Array(2 * owner.length);
    this.next = new Int32Array(2 * owner.length);
    this.owner.set(owner);
    this.share.set(share);
    this.next.set(next);
  }
}

/** How much of a beam square on it a receiver gets: 0 behind a one-sided one, either side of a leaf counts. */
export function receiverCosine({ normal, sides }: Receiver, toSky: Vec3): number {
  const cosine = dot(normal, toSky);
  return sides === 'both' ? Math.abs(cosine) : Math.max(0, cosine);
}

function checkOwners(surfaces: readonly Surface[], ownerCount: number): void {
  surfaces.forEach(({ owner }, i) => {
    if (!(owner < ownerCount)) {
      throw new Error(`traceWave: owner of surface ${i} must be below ${ownerCount}, got ${owner}`);
    }
  });
}

const directionsAStep = 16;

/** As `traceWave`, handing over after every 16 directions with the share done, 0 to 1. */
export function* traceWaveSteps(
  { surfaces, receivers, directions, ownerCount }: TraceWaveInput,
  makeTracer: MakeTracer = parallelBeamTracer,
): Generator<number, Wave, void> {
  checkOwners(surfaces, ownerCount);
  const trace = makeTracer(surfaces, receivers);
  const receiverCount = receivers.length;
  const rayCount = directions.length * receiverCount;
  const rayList = new Int32Array(rayCount);
  const rayFixedShare = new Float32Array(rayCount);
  const rayCosine = new Float32Array(rayCount);
  const surfaceOwner = Int32Array.from(surfaces, (s) => s.owner);
  const lists = new OwnerLists();
  const crossings = new Crossings(receiverCount);
  const fixedShare = new Float64Array(receiverCount);

  for (const [d, direction] of directions.entries()) {
    if (d > 0 && d % directionsAStep === 0) yield d / directions.length;
    crossings.clear();
    fixedShare.fill(1);
    trace(direction.toSky, (receiver, surface, passedShare) => {
      const owner = surfaceOwner[surface] as number;
      if (owner === fixedOwner) fixedShare[receiver] = (fixedShare[receiver] as number) * passedShare;
      else crossings.add(receiver, owner, passedShare);
    });
    for (let r = 0; r < receiverCount; r++) {
      const ray = d * receiverCount + r;
      rayCosine[ray] = receiverCosine(receivers[r] as Receiver, direction.toSky);
      rayFixedShare[ray] = fixedShare[r] as number;
      if (rayCosine[ray] === 0 || rayFixedShare[ray] === 0) continue;
      for (let at = crossings.first[r] as number; at >= 0; at = crossings.next[at] as number) {
        lists.put(crossings.owner[at] as number, crossings.share[at] as number);
      }
      rayList[ray] = lists.close();
    }
  }
  return { directions, receiverCount, rayList, rayFixedShare, rayCosine, ...lists.arrays() };
}

/**
 * Traces every receiver towards every direction. What is fixed (owner 0) is folded into the fixed share; rays that
 * something fixed ends, or that bring a receiver nothing, have the empty list.
 * Throws on an unsound scene (`checkScene`) and on owners past `ownerCount`.
 */
export function traceWave(input: TraceWaveInput, makeTracer: MakeTracer = parallelBeamTracer): Wave {
  const steps = traceWaveSteps(input, makeTracer);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
