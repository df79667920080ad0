/** Brings a wave up to date after a part of the scene has moved: only rays of and through that part are traced again. */
import { fixedOwner, type Receiver, type Surface } from '../../geometry/surface.ts';
import type { Direction } from '../directions.ts';
import type { Wave } from '../ledger.ts';
import type { MakeTracer } from '../tracer.ts';
import { type SceneChange, sceneChange } from './change.ts';
import { Crossings, isFixedCloud } from './crossings.ts';
import { OldLists } from './oldLists.ts';
import { parallelBeamTracer } from './parallelBeam.ts';
import { isUntidy, tidyWave } from './tidyWave.ts';
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

/** Whether owners that stay are numbered in the order they were, so that lists stay sorted. */
function isAscending(stays: Int32Array): boolean {
  const left = stays.filter((owner) => owner >= 0);
  return left.every((owner, i) => i === 0 || owner > (left[i - 1] as number));
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
  if (stays[fixedOwner] !== fixedOwner || !isAscending(stays)) {
    return yield* traceWaveSteps({ surfaces, receivers, directions, ownerCount }, makeTracer);
  }
  const receiverBefore = receiversBefore(before.receivers, receivers, change);
  const [kept, moved] = [where(receiverBefore, (was) => was >= 0), where(receiverBefore, (was) => was < 0)];
  const touched = where(surfaces, ({ owner }) => isTouched[owner] === 1);
  const ofMoved = new Part(input, [...surfaces.keys()], moved, makeTracer);
  const throughTouched = new Part(input, touched, kept, makeTracer);
  const lists = new OldLists(wave, stays);
  const record = new WaveRecord(directions, receivers, surfaces.some(isFixedCloud), lists.kept());
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
        if (rayCloudShare !== null) cloudShare[r] = rayCloudShare[ray] as number;
        const list = rayList[ray] as number;
        const isSame = lists.isWhole[list] === 1 && !through.hasOwners(nextKept);
        record.list[r] = isSame ? list : lists.close(list, record, through, nextKept);
        nextKept++;
      }
    }
    record.end(d, cloudShare);
  }
  const retraced = record.wave();
  return isUntidy(retraced, wave.listStart.length - 1) ? tidyWave(retraced) : retraced;
}

/**
 * The wave that `traceWave` would give of the scene as it now is: every ray with the same list, shares and cosine, to the last
 * bit; so is every answer. From the wave of the scene before: receivers that moved are traced anew against everything; of the
 * others, owners with a surface that moved, came or went are taken out of the lists and put in again from a trace of their surfaces
 * alone. Lists are numbered otherwise, and some may be of no ray or there twice, until they are half of all: `tidyWave` then gives
 * the very arrays of `traceWave`. Where something fixed (owner 0) differs, or owners change their order, all is traced anew.
 *
 * To the last bit, since shares of one owner are multiplied in the order of its surfaces, which stays; but for rays that
 * graze an edge within rounding (`parallelBeamTracer`).
 */
export const retraceWave = (input: RetraceWaveInput, makeTracer: MakeTracer = parallelBeamTracer): Wave =>
  lastOf(retraceWaveSteps(input, makeTracer));
