/** Traces one wave of leaf light: for every direction a lattice of parallel rays, each leaf hit is a sample. */
import { random01 } from '../../geometry/random.ts';
import type { Surface } from '../../geometry/surface.ts';
import type { CellKind, Direction } from '../directions.ts';
import type { LeafWave } from '../leafLedger.ts';
import { type MakeLatticeCaster, makeWholeSweep } from './lattice/caster.ts';
import { Collected } from './lattice/collect.ts';
import { type Box, type Lattice, latticeOver } from './lattice/lattice.ts';
import { type LatticeScene, makeLatticeScene } from './lattice/scene.ts';
import { fastestCaster } from './lattice/simdCaster.ts';

export interface TraceLeafWaveInput {
  readonly surfaces: readonly Surface[];
  /** Group of each surface, -1 for what gathers no light. Blades may, and meshes, each triangle for itself. */
  readonly group: Int32Array;
  readonly groupCount: number;
  readonly directions: readonly Direction[];
  /** Owners run from 0 to ownerCount - 1. */
  readonly ownerCount: number;
  /** Distance between neighbouring rays. */
  readonly spacingM: number;
  /** Seed and number of the wave: they place the lattices. */
  readonly seed: number;
  readonly wave: number;
}

export const directionsAStep = 16;
/** Room for more hits is made when they are there. */
const mostReserved = 1 << 24;
/** What the random numbers are for; no other use of a wave's seed has this word. */
const latticeWord = 31;
const kindWord: Readonly<Record<CellKind, number>> = { sky: 1, beam: 2, ground: 3 };

/** Throws unless owners and spacing fit; the scene itself is for `makeLatticeScene` to check. */
export function checkLeafWave({
  surfaces,
  ownerCount,
  spacingM,
}: Pick<TraceLeafWaveInput, 'surfaces' | 'ownerCount' | 'spacingM'>): void {
  if (!(spacingM > 0 && spacingM < Infinity)) {
    throw new Error(`traceLeafWave: spacingM must be above 0, got ${spacingM}`);
  }
  surfaces.forEach(({ owner }, i) => {
    if (owner >= ownerCount) {
      throw new Error(`traceLeafWave: owner of surface ${i} must be below ${ownerCount}, got ${owner}`);
    }
  });
}

/** The lattice of a direction, placed by the wave's own random numbers. */
export function latticeFor(
  box: Box,
  { toSky, kind, cell }: Direction,
  { spacingM, seed, wave }: Pick<TraceLeafWaveInput, 'spacingM' | 'seed' | 'wave'>,
): Lattice {
  const shift = (axis: number): number => random01(seed, wave, latticeWord, kindWord[kind], cell, axis);
  return latticeOver(box, toSky, spacingM, shift(0), shift(1));
}

/** Gathers a wave direction by direction. */
export class LeafWaveRecord {
  readonly collected: Collected;
  private readonly hitStart: Float64Array;
  private readonly runStart: Float64Array;
  private readonly window: Int32Array;
  private readonly scene: LatticeScene;
  private readonly input: Omit<TraceLeafWaveInput, 'surfaces' | 'group' | 'ownerCount'>;

  constructor(scene: LatticeScene, input: LeafWaveRecord['input']) {
    const { length } = input.directions;
    this.scene = scene;
    this.input = input;
    this.collected = new Collected(scene.clouds.length > 0);
    this.hitStart = new Float64Array(length + 1);
    this.runStart = new Float64Array(length + 1);
    this.window = new Int32Array(4 * length);
  }

  /** Makes room for what is to be expected: leaves at random show half their area; some wood lies before them. */
  reserve(): void {
    const { directions, spacingM } = this.input;
    const areaM2 = this.scene.groupAreaM2.reduce((sum, area) => sum + area, 0);
    const hits = Math.min(mostReserved, (areaM2 / 2 / spacingM ** 2) * directions.length * 1.3);
    this.collected.reserve(hits, hits / 2);
  }

  /** Its hits are all collected. */
  close(direction: number, { left, low, columns, rows }: Lattice): void {
    this.hitStart[direction + 1] = this.collected.count;
    this.runStart[direction + 1] = this.collected.runs;
    this.window.set([left, low, columns, rows], 4 * direction);
  }

  /** @param hits in arrays of their length, so that they can be handed over to another thread */
  finish(hits = this.collected.cut()): LeafWave {
    const { directions, groupCount, spacingM, seed, wave } = this.input;
    const { groupAreaM2, kindGroup, kindOwner, kindShare } = this.scene;
    const { hitStart, runStart, window } = this;
    const rayAreaM2 = spacingM ** 2;
    return {
      directions,
      groupCount,
      groupAreaM2,
      seed,
      wave,
      spacingM,
      rayAreaM2,
      hitStart,
      runStart,
      window,
      ...hits,
      kindGroup,
      kindOwner,
      kindShare,
    };
  }
}

/** Nothing gathers light. */
export const isDark = ({ low, high }: Box): boolean => !(high[0] >= low[0]);

/** As `traceLeafWave`, handing over after every 16 directions with the share done, 0 to 1. */
export function* traceLeafWaveSteps(
  input: TraceLeafWaveInput,
  makeCaster: MakeLatticeCaster = fastestCaster,
): Generator<number, LeafWave, void> {
  checkLeafWave(input);
  const { directions } = input;
  const scene = makeLatticeScene(input);
  const record = new LeafWaveRecord(scene, input);
  if (isDark(scene)) return record.finish();
  const [caster, wholeSweep] = [makeCaster(scene), makeWholeSweep()];
  record.reserve();
  for (const [d, direction] of directions.entries()) {
    if (d > 0 && d % directionsAStep === 0) yield d / directions.length;
    const lattice = latticeFor(scene, direction, input);
    caster.collect(wholeSweep(lattice), record.collected);
    record.close(d, lattice);
  }
  return record.finish();
}

/**
 * Traces all leaves towards every direction. Throws on an unsound scene (`checkScene`), on groups and owners out
 * of range and on a cloud that is not fixed.
 */
export function traceLeafWave(input: TraceLeafWaveInput, makeCaster?: MakeLatticeCaster): LeafWave {
  const steps = traceLeafWaveSteps(input, makeCaster);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
