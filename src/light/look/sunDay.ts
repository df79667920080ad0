/** A day in steps of ten minutes of solar time, each with the sun where it then stands. */
import type { Vec3 } from '../../geometry/vec.ts';
import { rad } from '../../geometry/world.ts';
import { sunsetHourAngleRad } from '../../season/extraterrestrial.ts';
import type { IsoDate } from '../../season/site.ts';
import { hangsOn, passedBy } from '../sky/cover.ts';
import { dayLight, type SkySite, type Weather } from '../sky/dayLight.ts';
import { daySteps, stepDeg } from '../sky/daySteps.ts';
import { hourAngleDeg, sunCoordinates } from '../sky/sunCoordinates.ts';
import { sunDirection, sunTimes } from '../sun.ts';

export interface SunStep {
  /** Of the middle of the part of the step in which the sun is up. */
  readonly instantMs: number;
  /** Hour angle of that moment, degrees; 0 at solar noon. */
  readonly hourAngleDeg: number;
  /** Unit vector towards the sun at that moment. */
  readonly toSky: Vec3;
  /** How long the sun is up in this step, hours: a sixth, less at its rise and set. */
  readonly sunH: number;
  /** On a level with nothing above it but the cover that hangs that day, if any; mol m-2 in the step. */
  readonly beamParMolM2: number;
  readonly diffuseParMolM2: number;
  /** The same above the cover, beam and sky together. */
  readonly openParMolM2: number;
}

export interface SunDay {
  /** The steps in which the sun is up, in order; none in polar night. */
  readonly steps: readonly SunStep[];
  /** Time between the rise and the set of the sun's centre, without refraction, hours. */
  readonly dayLengthH: number;
}

const dayMs = 86_400_000;
/** The equation of time moves by half a minute a day, so each round brings the instant two thousand times nearer. */
const rounds = 2;

/** The instant of that day at which the sun has that hour angle. */
function instantOf(hourAngle: number, transitMs: number, longitudeDeg: number): number {
  let ms = transitMs + (hourAngle / 360) * dayMs;
  for (let round = 0; round < rounds; round++) {
    const offDeg = hourAngle - hourAngleDeg(ms, longitudeDeg);
    ms += ((offDeg - 360 * Math.round(offDeg / 360)) / 360) * dayMs;
  }
  return ms;
}

/** Shares of the light that a cover leaves on that day: all of it where none hangs. */
const coverLeaves = ({ cover }: SkySite, date: IsoDate) =>
  cover !== undefined && hangsOn(cover, date) ? passedBy(cover) : { beam: 1, beamToSky: 0, sky: 1 };

/**
 * The sun of one day, for looking at shade as it passes. Its declination is that of each moment, so the direction is right within
 * 0.02 degrees (Meeus 1998, chapter 25); no refraction, the sun a point. The energy of each step is that of `dayLight`, whose day has one
 * declination: what it gives before this rise or after this set goes to the first or last step, so the day keeps its total.
 */
export function sunDay(site: SkySite, date: IsoDate, weather?: Weather): SunDay {
  const { latitudeDeg, longitudeDeg } = site;
  const { transitMs } = sunTimes(date, site);
  const declinationAt = (hourAngle: number): number =>
    sunCoordinates(instantOf(hourAngle, transitMs, longitudeDeg)).declinationDeg;
  /** Hour angle at which the sun's centre crosses the level; the declination is that of the crossing itself. */
  const crossingDeg = (sign: 1 | -1): number => {
    let angle = sign * 90;
    for (let round = 0; round < 4; round++) {
      angle = (sign * sunsetHourAngleRad(latitudeDeg, rad(declinationAt(angle))) * 180) / Math.PI;
    }
    return angle;
  };
  const [riseDeg, setDeg] = [crossingDeg(-1), crossingDeg(1)];
  const light = dayLight(site, date, weather);
  const up: { step: number; fromDeg: number; toDeg: number }[] = [];
  for (let step = 0; step < daySteps; step++) {
    const fromDeg = Math.max(riseDeg, step * stepDeg - 180);
    const toDeg = Math.min(setDeg, (step + 1) * stepDeg - 180);
    if (toDeg > fromDeg) up.push({ step, fromDeg, toDeg });
  }
  const left = coverLeaves(site, date);
  const steps = up.map(({ step, fromDeg, toDeg }, i): SunStep => {
    const middleDeg = (fromDeg + toDeg) / 2;
    const first = i === 0 ? 0 : step;
    const last = i === up.length - 1 ? daySteps - 1 : step;
    const beam = sumOf(light.beamParMolM2, first, last);
    const diffuse = sumOf(light.diffuseParMolM2, first, last);
    return {
      instantMs: instantOf(middleDeg, transitMs, longitudeDeg),
      hourAngleDeg: middleDeg,
      toSky: sunDirection(latitudeDeg, declinationAt(middleDeg), middleDeg),
      sunH: (toDeg - fromDeg) / 15,
      beamParMolM2: left.beam * beam,
      diffuseParMolM2: left.sky * diffuse + left.beamToSky * beam,
      openParMolM2: beam + diffuse,
    };
  });
  return { steps, dayLengthH: Math.max(0, setDeg - riseDeg) / 15 };
}

function sumOf(values: Float64Array, first: number, last: number): number {
  let sum = 0;
  for (let i = first; i <= last; i++) sum += values[i] as number;
  return sum;
}
