/** The light of a period, cell by cell. */
import { daysOf } from '../../season/calendar.ts';
import type { Period } from '../../season/site.ts';
import type { CellLight } from '../directions.ts';
import { sunDirection } from '../sun.ts';
import {
  beamCells,
  beamColumnDeg,
  beamColumns,
  beamRows,
  declinationAtRow,
  groundPatches,
  hourAngleAtColumn,
  rowOfDeclination,
} from './cells.ts';
import { dayLight, daySteps, hourAngleOfStep, type SkySite, type Weather } from './dayLight.ts';
import { type SkyKind, skyEnergy } from './skyEnergy.ts';

export interface CellLightInput {
  readonly site: SkySite;
  /** 0 to 1. */
  readonly groundReflectance: number;
  readonly period: Period;
  readonly skyKind: SkyKind;
  /** Of every day of the period; normal when left out. */
  readonly weather?: Weather;
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
 * Ground: as bright as open ground under the period's mean light, everywhere; the tree's own shadow on it is left out, so light
 * from below is somewhat too high under a dense crown.
 */
export function cellLight(input: CellLightInput): CellLight {
  const { site, groundReflectance, period, skyKind, weather } = input;
  if (!(groundReflectance >= 0 && groundReflectance <= 1)) {
    throw new Error(`cellLight: a ground reflectance of 0 to 1 is needed, got ${groundReflectance}`);
  }
  const dates = daysOf(period);
  const levelBeam = new Float64Array(beamCells);
  const levelDiffuse = new Float64Array(beamCells);
  let openBeam = 0;
  let openDiffuse = 0;
  for (const date of dates) {
    const day = dayLight(site, date, weather);
    putIntoBoxes(day.declinationDeg, day.beamParMolM2, levelBeam);
    putIntoBoxes(day.declinationDeg, day.diffuseParMolM2, levelDiffuse);
    openBeam += total(day.beamParMolM2);
    openDiffuse += total(day.diffuseParMolM2);
  }
  openBeam /= dates.length;
  openDiffuse /= dates.length;
  const beam = squareToTheBeam(levelBeam, site.latitudeDeg).map((energy) => energy / dates.length);
  const groundRadiance = (groundReflectance * (openBeam + openDiffuse)) / Math.PI;
  return {
    sky: skyEnergy({ skyKind, openDiffuse, levelDiffuse, latitudeDeg: site.latitudeDeg }),
    beam,
    ground: Float64Array.from(groundPatches, (patch) => groundRadiance * patch.solidAngleSr),
    openSkyParMolM2Day: openBeam + openDiffuse,
    openBeamParMolM2Day: openBeam,
    openDiffuseParMolM2Day: openDiffuse,
  };
}

/** Adds the level light of a day's steps to their boxes, shared linearly between the two nearest rows. */
function putIntoBoxes(declinationDeg: number, steps: Float64Array, boxes: Float64Array): void {
  const place = rowOfDeclination(declinationDeg) - 0.5;
  const lower = Math.max(0, Math.min(beamRows - 1, Math.floor(place)));
  const upper = Math.min(beamRows - 1, lower + 1);
  const upperShare = Math.min(1, Math.max(0, place - lower));
  for (let step = 0; step < daySteps; step++) {
    const energy = steps[step] as number;
    if (energy === 0) continue;
    const column = Math.floor((hourAngleOfStep(step) + 180) / beamColumnDeg);
    addTo(boxes, lower * beamColumns + column, energy * (1 - upperShare));
    addTo(boxes, upper * beamColumns + column, energy * upperShare);
  }
}

/** Least mean sine of elevation of a box that may carry energy. */
const leastMeanSine = 0.01;

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

/** Mean over a box of the sine of elevation, 0 where the sun is down: 8 x 8 points, right within 0.2 % for boxes well up. */
export function boxMeanSine(latitudeDeg: number, row: number, column: number): number {
  const points = 8;
  let sum = 0;
  for (let i = 0; i < points; i++) {
    const declination = declinationAtRow(row + (i + 0.5) / points);
    for (let j = 0; j < points; j++) {
      const hourAngle = hourAngleAtColumn(column + (j + 0.5) / points);
      sum += Math.max(0, sunDirection(latitudeDeg, declination, hourAngle)[1]);
    }
  }
  return sum / points ** 2;
}

function addTo(values: Float64Array, i: number, amount: number): void {
  values[i] = (values[i] as number) + amount;
}

function total(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
}
