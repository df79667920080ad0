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
import { compareOwners, type OwnerChange, receiversBefore } from './whatStays.ts';

interface Scene {
  readonly surfaces: readonly Surface[];
  readonly receivers: readonly Receiver[];
}

export interface RetracingInput extends Scene {
  /** Owners run from 0 to ownerCount - 1. */
  readonly ownerCount: number;
  /** The scene that the waves were traced of; what the two have in common is taken from those. */
  readonly before: Scene;
  /** `sceneChange(before.surfaces, surfaces)`, where it is known already. */
  readonly change?: SceneChange;
}

export interface RetraceWaveInput extends RetracingInput {
  readonly wave: Wave;
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

/** What the scenes before and after have in common; waves are brought up to date by it one after another. */
class Retracer {
  private readonly input: RetracingInput;
  private readonly stays: Int32Array;
  /** Receivers that stayed, what they were before, and those that did not stay. */
  private readonly kept: readonly number[];
  private readonly keptBefore: Int32Array;
  private readonly moved: readonly number[];
  private readonly ofMoved: Part;
  private readonly throughTouched: Part;

  constructor(input: RetracingInput, change: SceneChange, owners: OwnerChange, makeTracer: MakeTracer) {
    const { surfaces, receivers, before } = input;
    const receiverBefore = receiversBefore(before.receivers, receivers, change);
    const touched = where(surfaces, ({ owner }) => owners.isTouched[owner] === 1);
    this.input = input;
    this.stays = owners.stays;
    this.kept = where(receiverBefore, (was) => was >= 0);
    this.keptBefore = receiverBefore.filter((was) => was >= 0);
    this.moved = where(receiverBefore, (was) => was < 0);
    this.ofMoved = new Part(input, [...surfaces.keys()], this.moved, makeTracer);
    this.throughTouched = new Part(input, touched, this.kept, makeTracer);
  }

  *steps(wave: Wave): Generator<number, Wave, void> {
    const { ofMoved, throughTouched } = this;
    const { surfaces, receivers } = this.input;
    const lists = new OldLists(wave, this.stays);
    const record = new WaveRecord(wave.directions, receivers, surfaces.some(isFixedCloud), lists.kept());
    const cloudShare = new Float64Array(receivers.length);
    for (const [d, direction] of wave.directions.entries()) {
      if (d > 0 && d % directionsAStep === 0) yield d / wave.directions.length;
      ofMoved.follow(direction);
      throughTouched.follow(direction);
      record.begin(d);
      this.takeOver(wave, d, lists, record);
      for (let k = 0; k < this.moved.length; k++) {
        const r = this.moved[k] as number;
        record.list[r] = closeRay(record, r, ofMoved.crossings, k);
      }
      if (wave.rayCloudShare !== null) this.takeClouds(wave, d, cloudShare);
      record.end(d, cloudShare);
    }
    const retraced = record.wave();
    return isUntidy(retraced, wave.listStart.length - 1) ? tidyWave(retraced) : retraced;
  }

  /** The lists of receivers that stayed: most are as they were. */
  private takeOver({ rayList, receiverCount }: Wave, d: number, lists: OldLists, record: WaveRecord): void {
    const { kept, keptBefore, throughTouched } = this;
    const { crossings } = throughTouched;
    const first = d * receiverCount;
    for (let k = 0; k < kept.length; k++) {
      const list = rayList[first + (keptBefore[k] as number)] as number;
      const isWhole = lists.isWhole[list] === 1;
      record.list[kept[k] as number] = isWhole ? list : lists.close(list, record, crossings, k);
    }
    for (let at = 0; at < crossings.crossedCount; at++) {
      const k = crossings.crossed[at] as number;
      const list = rayList[first + (keptBefore[k] as number)] as number;
      if (lists.isWhole[list] === 1) {
        record.list[kept[k] as number] = lists.close(list, record, crossings, k);
      }
    }
  }

  private takeClouds({ rayCloudShare, receiverCount }: Wave, d: number, into: Float64Array): void {
    const { kept, keptBefore, moved, ofMoved } = this;
    kept.forEach((r, k) => {
      into[r] = rayCloudShare?.[d * receiverCount + (keptBefore[k] as number)] as number;
    });
    moved.forEach((r, k) => {
      into[r] = ofMoved.crossings.cloudShare[k] as number;
    });
  }
}

/**
 * Brings waves of one scene up to date, one after another: what does not depend on the wave is prepared once. The steps are those of
 * `retraceWaveSteps`; one wave is to be done before the next is begun.
 */
export function waveRetracing(
  input: RetracingInput,
  makeTracer: MakeTracer = parallelBeamTracer,
): (wave: Wave) => Generator<number, Wave, void> {
  const { surfaces, receivers, ownerCount, before } = input;
  checkOwners(surfaces, ownerCount);
  const change = input.change ?? sceneChange(before.surfaces, surfaces);
  const owners = compareOwners(before.surfaces, surfaces, ownerCount, change);
  if (owners.stays[fixedOwner] !== fixedOwner || !isAscending(owners.stays)) {
    return ({ directions }) => traceWaveSteps({ surfaces, receivers, directions, ownerCount }, makeTracer);
  }
  const retracer = new Retracer(input, change, owners, makeTracer);
  return (wave) => retracer.steps(wave);
}

/** As `retraceWave`, handing over after every 16 directions with the share done, 0 to 1. */
export const retraceWaveSteps = (
  input: RetraceWaveInput,
  makeTracer?: MakeTracer,
): Generator<number, Wave, void> => waveRetracing(input, makeTracer)(input.wave);

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
