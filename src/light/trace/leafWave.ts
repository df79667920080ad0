/** Traces one wave of leaf light: for every direction a lattice of parallel rays, each leaf hit is a sample. */
import { random01 } from '../../geometry/random.ts';
import type { Surface } from '../../geometry/surface.ts';
import type { CellKind, Direction } from '../directions.ts';
import type { LeafWave } from '../leafLedger.ts';
import type { MakeLatticeCaster } from './lattice/caster.ts';
import { type Box, type Lattice, latticeOver } from './lattice/lattice.ts';
import { makeLatticeScene } from './lattice/scene.ts';
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

const directionsAStep = 16;
/** What the random numbers are for; no other use of a wave's seed has this word. */
const latticeWord = 31;
const kindWord: Readonly<Record<CellKind, number>> = { sky: 1, beam: 2, ground: 3 };

function check({ surfaces, ownerCount, spacingM }: TraceLeafWaveInput): void {
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

/** As `traceLeafWave`, handing over after every 16 directions with the share done, 0 to 1. */
export function* traceLeafWaveSteps(
  input: TraceLeafWaveInput,
  makeCaster: MakeLatticeCaster = fastestCaster,
): Generator<number, LeafWave, void> {
  check(input);
  const { directions, groupCount, spacingM } = input;
  const scene = makeLatticeScene(input);
  const caster = makeCaster(scene);
  const hitStart = new Float64Array(directions.length + 1);
  const isEmpty = !(scene.high[0] >= scene.low[0]);
  for (const [d, direction] of directions.entries()) {
    if (isEmpty) break;
    if (d > 0 && d % directionsAStep === 0) yield d / directions.length;
    hitStart[d + 1] = caster.collect(latticeFor(scene, direction, input));
  }
  const { groupAreaM2, kindGroup, kindOwner, kindShare } = scene;
  const kinds = { kindGroup, kindOwner, kindShare };
  return {
    directions,
    groupCount,
    groupAreaM2,
    rayAreaM2: spacingM ** 2,
    hitStart,
    ...caster.collected(),
    ...kinds,
  };
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
