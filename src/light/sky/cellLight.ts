/** The light of a period, cell by cell. */
import type { Period } from '../../season/site.ts';
import type { CellLight } from '../directions.ts';
import { boxMeanSine, leastMeanSine } from './boxSine.ts';
import { beamCells, beamColumnDeg, beamColumns, beamRows, groundPatches } from './cells.ts';
import type { SkySite, Weather } from './dayLight.ts';
import { daySteps, hourAngleOfStep, hourSteps } from './daySteps.ts';
import { type LevelLight, levelLight } from './levelLight.ts';
import { hasRing, type SkyKind, skyEnergy } from './skyEnergy.ts';

export interface CellLightInput {
  readonly site: SkySite;
  /** 0 to 1. */
  readonly groundReflectance: number;
  readonly period: Period;
  readonly skyKind: SkyKind;
  /** Of every day of the period; normal when left out. */
  readonly weather?: Weather;
}

/** What turns the light on the level into that of the cells. */
export interface SkyOver {
  readonly latitudeDeg: number;
  /** 0 to 1. */
  readonly groundReflectance: number;
  readonly skyKind: SkyKind;
  /** Only the light of one hour of each day: 12 is the hour that begins at solar noon; the whole day when left out. */
  readonly solarHour?: number;
}

/**
 * Energy of every cell, mean of the period's days in a normal year, or all of them cloudless.
 *
 * Beam: each 10-minute step of each day goes into the boxes of its hour angle, shared between the two rows whose middles are next to
 * the day's declination. Box energy is its level light divided by the box's mean sine of elevation, so random directions
 * within it give an open level sensor the closed sum: exact in the mean over waves, whatever the period. What is
 * not exact is *where* the beam comes from: within 20 minutes and, for a single day, with a spread in declination
 * of up to 3.5 degrees rms at the equinoxes, 0.3 at the solstices (its mean is right within 0.3). Shadows of a single
 * day are blurred by that much, those of a month hardly. Light of boxes whose mean sine of elevation is below 0.01 goes
 * to the next box towards noon: below 0.3 % of a day's beam up to 65 degrees of latitude.
 *
 * Sky: level light of the day over the patches by their brightness (`skyEnergy`), scaled so that the level gets the closed sum.
 * Ground: as bright as open ground under the mean light; its shade is in `rayWeights`. Rising ground and a skyline: as level ground of their
 * reflectance. Below a cover all light is what it passes; the open sky stays that above it.
 */
export function cellLight({ site, period, weather, ...over }: CellLightInput): CellLight {
  return cellLightOf(levelLight(site, period, weather), { ...over, latitudeDeg: site.latitudeDeg });
}

/** As `cellLight`, from light on the level that was added up before. */
export function cellLightOf(level: LevelLight, over: SkyOver): CellLight {
  const { groundReflectance, solarHour } = over;
  if (!(groundReflectance >= 0 && groundReflectance <= 1)) {
    throw new Error(`cellLight: a ground reflectance of 0 to 1 is needed, got ${groundReflectance}`);
  }
  if (solarHour !== undefined && !(Number.isInteger(solarHour) && solarHour >= 0 && solarHour < 24)) {
    throw new Error(`cellLight: an hour of the day is a whole number from 0 to 23, got ${solarHour}`);
  }
  const whole = cellsOf(level, level.days, over);
  const { poses } = level;
  return poses === null ? whole : { ...whole, poses: poses.map((pose) => cellsOf(pose, level.days, over)) };
}

/** @param days that the light is the mean of */
function cellsOf(level: LevelLight, days: number, over: SkyOver): CellLight {
  const { latitudeDeg, groundReflectance, skyKind, solarHour } = over;
  const open = boxesOf(level, hasRing(skyKind), solarHour);
  const below = level.below ? boxesOf(level.below, hasRing(skyKind), solarHour) : open;
  const [openBeam, openDiffuse] = [total(open.beamPar) / days, total(open.diffusePar) / days];
  const [belowBeam, belowDiffuse] = [total(below.beamPar) / days, total(below.diffusePar) / days];
  const boxes = { diffusePar: below.diffusePar, ...radiationOf(level, solarHour) };
  const beam = squareToTheBeam(below.beamPar, latitudeDeg).map((energy) => energy / days);
  const groundRadiance = (groundReflectance * (belowBeam + belowDiffuse)) / Math.PI;
  const { horizon } = level;
  const skylineRadiance = ((horizon?.skylineReflectance ?? 0) * (belowBeam + belowDiffuse)) / Math.PI;
  return {
    sky: skyEnergy({ skyKind, openDiffuse: belowDiffuse, boxes, latitudeDeg }),
    beam,
    ground: Float64Array.from(groundPatches, (patch) => groundRadiance * patch.solidAngleSr),
    openSkyParMolM2Day: openBeam + openDiffuse,
    openBeamParMolM2Day: openBeam,
    openDiffuseParMolM2Day: openDiffuse,
    ...(level.below && { below: { beamParMolM2Day: belowBeam, diffuseParMolM2Day: belowDiffuse } }),
    ...(horizon && { hiding: { horizon, groundRadiance, skylineRadiance } }),
  };
}

/** PAR of each box; a ring round the sun goes from the beam to skies that have one of their own. */
function boxesOf(
  level: LevelLight | NonNullable<LevelLight['below']>,
  skyHasRing: boolean,
  solarHour?: number,
) {
  const beamPar = inBoxes(level.beamParMolM2, solarHour);
  const diffusePar = inBoxes(level.diffuseParMolM2, solarHour);
  if (!skyHasRing) return { beamPar, diffusePar };
  const ring = inBoxes(level.ringParMolM2, solarHour);
  return {
    beamPar: beamPar.map((energy, box) => Math.max(0, energy - (ring[box] as number))),
    diffusePar: diffusePar.map((energy, box) => energy + (ring[box] as number)),
  };
}

const radiationOf = (level: LevelLight, solarHour?: number) => ({
  globalMJM2: inBoxes(level.globalMJM2, solarHour),
  diffuseMJM2: inBoxes(level.diffuseMJM2, solarHour),
  sunH: inBoxes(level.sunH, solarHour),
});

/** Sums of rows and steps, of the whole day or of one hour, into the boxes of the beam grid. */
export function inBoxes(steps: Float64Array, solarHour?: number): Float64Array {
  const boxes = new Float64Array(beamCells);
  const from = solarHour === undefined ? 0 : solarHour * hourSteps;
  const end = solarHour === undefined ? daySteps : from + hourSteps;
  for (let row = 0; row < beamRows; row++) {
    for (let step = from; step < end; step++) {
      const column = Math.floor((hourAngleOfStep(step) + 180) / beamColumnDeg);
      addTo(boxes, row * beamColumns + column, steps[row * daySteps + step] as number);
    }
  }
  return boxes;
}

/** Turns level light into light square to the beam, box by box, from the horizon towards noon. */
function squareToTheBeam(levelBeam: Float64Array, latitudeDeg: number): Float64Array {
  const level = levelBeam.slice();
  const square = new Float64Array(beamCells);
  for (let row = 0; row < beamRows; row++) {
    for (const column of columnsTowardsNoon) {
      const cell = row * beamColumns + column;
      const energy = level[cell] as number;
      if (energy === 0) continue;
      const sine = boxMeanSine(latitudeDeg, row, column);
      const inward = column < beamColumns / 2 ? column + 1 : column - 1;
      if (sine >= leastMeanSine || (sine > 0 && isNoon(column))) square[cell] = energy / sine;
      else if (!isNoon(column)) addTo(level, row * beamColumns + inward, energy);
    }
  }
  return square;
}

const isNoon = (column: number): boolean => column === beamColumns / 2 || column === beamColumns / 2 - 1;

/** 0, 35, 1, 34, ... 17, 18. */
const columnsTowardsNoon: readonly number[] = Array.from({ length: beamColumns }, (_, i) =>
  i % 2 === 0 ? i / 2 : beamColumns - (i + 1) / 2,
);

function addTo(values: Float64Array, i: number, amount: number): void {
  values[i] = (values[i] as number) + amount;
}

function total(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
}
