/** Brings a wave up to date after a part of the scene has moved: only rays of and through that part are traced again. */
import { fixedOwner, type Receiver, type Surface } from '../../geometry/surface.ts';
import type { Direction } from '../directions.ts';
import type { Wave } from '../ledger.ts';
import type { MakeTracer } from '../tracer.ts';
import { type SceneChange, sceneChange } from './change.ts';
import { Crossings, isFixedCloud } from './crossings.ts';
import { OldLists } from './oldLists.ts';
import { parallelBeamTracer } from './parallelBeam.ts';
import { checkOwners, closeRay, directionsAStep, lastOf, traceWaveSteps } from './wave.ts';
import { WaveRecord } from './waveRecord.ts';
import { compareOwners, receiversBefore } from './whatStays.ts';

interface Scene {
  readonly surfaces: readonly Surface[];
  readonly receivers: readonly Receiver[];
}

export interface RetraceWaveInput extends Scene {
  /** Owners run from 0 to ownerCount - 1. */
  readonly ownerCount: number;
  /** The scene that `wave` was traced of; what the two have in common is taken from that wave. */
  readonly before: Scene;
  readonly wave: Wave;
  /** `sceneChange(before.surfaces, surfaces)`, where it is known already. */
  readonly change?: SceneChange;
}

/** Some receivers among some surfaces, traced by themselves. */
class Part {
  readonly crossings: Crossings;
  private readonly trace: ReturnType<MakeTracer>;

  constructor(scene: Scene, wanted: readonly number[], asked: readonly number[], makeTracer: MakeTracer) {
    const place = new Map(wanted.map((surface, i) => [surface, i]));
    const surfaces = wanted.map((surface) => scene.surfaces[surface] as Surface);
    const receivers = asked.map((r): Receiver => {
      const receiver = scene.receivers[r] as Receiver;
      return { ...receiver, onSurface: place.get(receiver.onSurface) ?? -1 };
    });
    this.crossings = new Crossings(surfaces, receivers.length);
    this.trace = makeTracer(surfaces, receivers);
  }

  follow({ toSky }: Direction): void {
    this.crossings.clear();
    this.trace(toSky, this.crossings.add);
  }
}

function where<T>(values: ArrayLike<T>, wanted: (value: T) => boolean): number[] {
  return Array.from({ length: values.length }, (_, i) => i).filter((i) => wanted(values[i] as T));
}

/** As `retraceWave`, handing over after every 16 directions with the share done, 0 to 1. */
export function* retraceWaveSteps(
  input: RetraceWaveInput,
  makeTracer: MakeTracer = parallelBeamTracer,
): Generator<number, Wave, void> {
  const { surfaces, receivers, ownerCount, before, wave } = input;
  const { directions, receiverCount: hadReceivers, rayList, rayCloudShare } = wave;
  checkOwners(surfaces, ownerCount);
  const change = input.change ?? sceneChange(before.surfaces, surfaces);
  const { stays, isTouched } = compareOwners(before.surfaces, surfaces, ownerCount, change);
  if (stays[fixedOwner] !== fixedOwner) {
    return yield* traceWaveSteps({ surfaces, receivers, directions, ownerCount }, makeTracer);
  }
  const receiverBefore = receiversBefore(before.receivers, receivers, change);
  const [kept, moved] = [where(receiverBefore, (was) => was >= 0), where(receiverBefore, (was) => was < 0)];
  const touched = where(surfaces, ({ owner }) => isTouched[owner] === 1);
  const ofMoved = new Part(input, [...surfaces.keys()], moved, makeTracer);
  const throughTouched = new Part(input, touched, kept, makeTracer);
  const record = new WaveRecord(directions, receivers, surfaces.some(isFixedCloud));
  const lists = new OldLists(wave, stays, record);
  const through = throughTouched.crossings;
  const cloudShare = new Float64Array(receivers.length);
  for (const [d, direction] of directions.entries()) {
    if (d > 0 && d % directionsAStep === 0) yield d / directions.length;
    ofMoved.follow(direction);
    throughTouched.follow(direction);
    record.begin(d);
    let [nextMoved, nextKept] = [0, 0];
    for (let r = 0; r < receivers.length; r++) {
      const was = receiverBefore[r] as number;
      if (was < 0) {
        cloudShare[r] = ofMoved.crossings.cloudShare[nextMoved] as number;
        record.list[r] = closeRay(record, r, ofMoved.crossings, nextMoved++);
      } else {
        const ray = d * hadReceivers + was;
        cloudShare[r] = rayCloudShare?.[ray] ?? 1;
        const list = rayList[ray] as number;
        const known = through.hasOwners(nextKept) ? -1 : (lists.after[list] as number);
        record.list[r] = known >= 0 ? known : lists.close(list, through, nextKept);
        nextKept++;
      }
    }
    record.end(d, cloudShare);
  }
  return record.wave();
}

/**
 * The wave that `traceWave` would give of the scene as it now is, to the last bit of every array, from the wave of the scene
 * before. Receivers that moved are traced anew against everything; of the others, owners with a surface that moved, came or went are
 * taken out of the lists and put in again from a trace of their surfaces alone. Where something fixed (owner 0) differs, all is
 * traced anew.
 *
 * To the last bit, since shares of one owner are multiplied in the order of its surfaces, which stays, and lists are numbered in the
 * order they are met; but for rays that graze an edge within rounding (`parallelBeamTracer`).
 */
export const retraceWave = (input: RetraceWaveInput, makeTracer: MakeTracer = parallelBeamTracer): Wave =>
  lastOf(retraceWaveSteps(input, makeTracer));
