/** Light on the open level over some days, by the sun's declination and its time: what every question about these days is answered from. */
import { daysOf } from '../../season/calendar.ts';
import type { IsoDate, Period } from '../../season/site.ts';
import { beamRows, rowOfDeclination } from './cells.ts';
import { type Cover, hangsOn, passedBy } from './cover.ts';
import { type DayLight, dayLights, type SkySite, type Weather } from './dayLight.ts';
import { daySteps, stepDeg } from './daySteps.ts';
import { type Horizon, horizonOf } from './horizon.ts';
import { poseCount, poseOn } from './turns.ts';

/**
 * Sums over the days. Entry row * 144 + step: row of the beam grid (`cells.ts`), ten minutes of solar time from midnight. A day is shared
 * linearly between the two rows whose middles are next to its declination.
 */
export interface LevelLight extends BeamAndSky {
  readonly days: number;
  /** Radiation of all wavelengths, MJ m-2, above any cover. */
  readonly globalMJM2: Float64Array;
  readonly diffuseMJM2: Float64Array;
  /** Hours in which the sun's centre is above the level. */
  readonly sunH: Float64Array;
  /** What is left of it below the cover; null where none ever hangs. */
  readonly below: BeamAndSky | null;
  /** What hides the low sky; null for an open horizon. The light on the open level is counted without it. */
  readonly horizon: Horizon | null;
  /** The same by the pose of a pot that is turned, pose by pose, without poses of their own; null for one that is not. */
  readonly poses: readonly LevelLight[] | null;
}

/** mol m-2. */
interface BeamAndSky {
  /** With the bright ring round the sun. */
  readonly beamParMolM2: Float64Array;
  /** Without that ring. */
  readonly diffuseParMolM2: Float64Array;
  /** The ring, part of the beam's above: skies that have a ring of their own take it from there. */
  readonly ringParMolM2: Float64Array;
}

const entries = beamRows * daySteps;
const beamAndSky = (): BeamAndSky => ({
  beamParMolM2: new Float64Array(entries),
  diffuseParMolM2: new Float64Array(entries),
  ringParMolM2: new Float64Array(entries),
});

/** Hours of a step between a sunrise and a sunset as far from noon as each other. */
function sunHoursOfStep(step: number, sunsetHourAngleDeg: number): number {
  const from = Math.max(-sunsetHourAngleDeg, step * stepDeg - 180);
  const to = Math.min(sunsetHourAngleDeg, (step + 1) * stepDeg - 180);
  return Math.max(0, to - from) / 15;
}

/** Adds a day's steps to its two rows. */
function addDay(into: Float64Array, declinationDeg: number, steps: Float64Array): void {
  const place = rowOfDeclination(declinationDeg) - 0.5;
  const lower = Math.max(0, Math.min(beamRows - 1, Math.floor(place)));
  const upper = Math.min(beamRows - 1, lower + 1);
  const upperShare = Math.min(1, Math.max(0, place - lower));
  for (let step = 0; step < daySteps; step++) {
    const value = steps[step] as number;
    if (value === 0) continue;
    const [low, high] = [lower * daySteps + step, upper * daySteps + step];
    into[low] = (into[low] as number) + value * (1 - upperShare);
    into[high] = (into[high] as number) + value * upperShare;
  }
}

/** Adds what a day's light comes to below the cover, on that day. */
function addBelow(into: BeamAndSky, { declinationDeg, ...day }: DayLight, cover: Cover, date: IsoDate): void {
  const left = hangsOn(cover, date) ? passedBy(cover) : { beam: 1, beamToSky: 0, sky: 1 };
  const diffuse = day.diffuseParMolM2.map(
    (sky, step) => left.sky * sky + left.beamToSky * (day.beamParMolM2[step] as number),
  );
  const beam = day.beamParMolM2.map((value) => left.beam * value);
  addDay(into.beamParMolM2, declinationDeg, beam);
  addDay(into.diffuseParMolM2, declinationDeg, diffuse);
  addDay(
    into.ringParMolM2,
    declinationDeg,
    day.ringParMolM2.map((value) => left.beam * value),
  );
}

type DayOf = (date: IsoDate) => DayLight;

function ofDays(site: SkySite, dates: readonly IsoDate[], dayOf: DayOf): LevelLight {
  const { cover } = site;
  const below = cover === undefined ? null : beamAndSky();
  const open = beamAndSky();
  const [globalMJM2, diffuseMJM2] = [new Float64Array(entries), new Float64Array(entries)];
  const sunH = new Float64Array(entries);
  const sunHOfStep = new Float64Array(daySteps);
  for (const date of dates) {
    const day = dayOf(date);
    const { declinationDeg, sunsetHourAngleDeg, steps } = day;
    for (let step = 0; step < daySteps; step++) sunHOfStep[step] = sunHoursOfStep(step, sunsetHourAngleDeg);
    addDay(open.beamParMolM2, declinationDeg, day.beamParMolM2);
    addDay(open.diffuseParMolM2, declinationDeg, day.diffuseParMolM2);
    addDay(open.ringParMolM2, declinationDeg, day.ringParMolM2);
    addDay(globalMJM2, declinationDeg, steps.global);
    addDay(diffuseMJM2, declinationDeg, steps.diffuse);
    addDay(sunH, declinationDeg, sunHOfStep);
    if (below !== null && cover !== undefined) addBelow(below, day, cover, date);
  }
  const radiation = { globalMJM2, diffuseMJM2 };
  return { days: dates.length, ...open, ...radiation, sunH, below, horizon: horizonOf(site), poses: null };
}

/** Throws on a period that ends before it begins. */
export function levelLight(site: SkySite, period: Period, weather?: Weather): LevelLight {
  const dates = daysOf(period);
  const { quarterTurns: turns } = site;
  const dayOf = dayLights(site, weather);
  if (turns === undefined) return ofDays(site, dates, dayOf);
  const poses = Array.from({ length: poseCount }, (_, pose) =>
    ofDays(
      site,
      dates.filter((date) => poseOn(turns, date) === pose),
      dayOf,
    ),
  );
  return { ...together(poses), poses };
}

const sumOf = (arrays: readonly Float64Array[]): Float64Array => {
  const sum = new Float64Array(entries);
  for (const values of arrays) {
    values.forEach((value, i) => {
      sum[i] = (sum[i] as number) + value;
    });
  }
  return sum;
};

const bothOf = (parts: readonly BeamAndSky[]): BeamAndSky => ({
  beamParMolM2: sumOf(parts.map((part) => part.beamParMolM2)),
  diffuseParMolM2: sumOf(parts.map((part) => part.diffuseParMolM2)),
  ringParMolM2: sumOf(parts.map((part) => part.ringParMolM2)),
});

/** The light of all their days; they must be of one site. */
export function together(parts: readonly LevelLight[]): LevelLight {
  const posesOf = parts.map(({ poses }) => poses);
  return {
    days: parts.reduce((days, part) => days + part.days, 0),
    ...bothOf(parts),
    globalMJM2: sumOf(parts.map((part) => part.globalMJM2)),
    diffuseMJM2: sumOf(parts.map((part) => part.diffuseMJM2)),
    sunH: sumOf(parts.map((part) => part.sunH)),
    below: parts.some(({ below }) => below !== null) ? bothOf(parts.map((part) => part.below ?? part)) : null,
    horizon: parts[0]?.horizon ?? null,
    poses: posesOf.every((poses) => poses !== null)
      ? Array.from({ length: poseCount }, (_, p) => together(posesOf.map((poses) => poses[p] as LevelLight)))
      : null,
  };
}
