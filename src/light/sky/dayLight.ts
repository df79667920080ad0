/** The PAR of a normal or a clear day, step by step through solar time. */
import { diffuseShareOfPar } from '../../season/diffuseShare.ts';
import { parMolPerMJ } from '../../season/par.ts';
import type { IsoDate, Site } from '../../season/site.ts';
import type { Cover } from './cover.ts';
import { daySteps } from './daySteps.ts';
import type { HorizonSite } from './horizon.ts';
import { holdLowBeam } from './lowBeam.ts';
import {
  clearSteps,
  hourlySteps,
  normalSteps,
  type RadiationSteps,
  sinesOfSteps,
  sum,
  trueOrbit,
} from './radiationSteps.ts';
import type { QuarterTurns } from './turns.ts';

/** What the sky needs to know of a site, and what lies between the sky and a plant there. */
export interface SkySite extends Pick<Site, 'latitudeDeg' | 'longitudeDeg' | 'climate'>, HorizonSite {
  /** Of the sea: a clear day is the brighter the higher; 0 when left out. */
  readonly elevationM?: number | undefined;
  readonly cover?: Cover | undefined;
  readonly quarterTurns?: QuarterTurns | undefined;
  /** Whether walls throw light back, by their reflectance; dark when left out. */
  readonly wallsThrowLight?: boolean | undefined;
}

export interface DayLight {
  readonly declinationDeg: number;
  readonly sunsetHourAngleDeg: number;
  readonly globalMJM2: number;
  readonly diffuseMJM2: number;
  /** On the level in each step, MJ m-2. */
  readonly steps: RadiationSteps;
  /** Beam PAR on the level in each step, mol m-2, with the bright ring round the sun. */
  readonly beamParMolM2: Float64Array;
  /** Diffuse PAR on the level in each step, mol m-2, without that ring. */
  readonly diffuseParMolM2: Float64Array;
  /** PAR of the ring, part of the beam's above: skies that have a ring of their own take it from there. */
  readonly ringParMolM2: Float64Array;
}

/** A day of the mean weather of its month, or one without a cloud. */
export type Weather = 'normal' | 'clear';

/** PAR of a day's steps from their radiation. */
function parOf({ global, diffuse }: RadiationSteps, sines: Float64Array) {
  const [beamParMolM2, diffuseParMolM2, ringParMolM2] = [
    new Float64Array(daySteps),
    new Float64Array(daySteps),
    new Float64Array(daySteps),
  ];
  for (let step = 0; step < daySteps; step++) {
    const whole = global[step] as number;
    if (!(whole > 0)) continue;
    const share = Math.min(1, (diffuse[step] as number) / whole);
    const sine = Math.min(1, Math.max(0, sines[step] as number));
    const sky = diffuseShareOfPar(share, sine);
    diffuseParMolM2[step] = whole * parMolPerMJ * sky;
    beamParMolM2[step] = whole * parMolPerMJ * (1 - sky);
    ringParMolM2[step] = whole * parMolPerMJ * (diffuseShareOfPar(share, sine, 'in the sky') - sky);
  }
  return { beamParMolM2, diffuseParMolM2, ringParMolM2 };
}

/**
 * The days of a site, each step by step: its radiation, turned into PAR by one factor; the diffuse share of PAR by
 * Spitters and others 1986. Normal days are made of mean hours where the climate has them, else of its monthly means. The sun's
 * path is that of the day's true declination. PAR of all steps together is the day's global radiation times the PAR factor, exactly.
 */
export function dayLights(site: SkySite, weather: Weather = 'normal'): (date: IsoDate) => DayLight {
  const { latitudeDeg, climate } = site;
  const ofHours = climate.hourly && hourlySteps(climate.hourly, site);
  return (date) => {
    const orbit = trueOrbit(site, date);
    const { declinationRad, sunsetRad } = orbit;
    const sines = sinesOfSteps(latitudeDeg, declinationRad);
    const normal = (): RadiationSteps => ofHours?.(date, sines) ?? normalSteps(site, date, orbit);
    const asGiven = weather === 'clear' ? clearSteps(sines, orbit, site.elevationM) : normal();
    const steps = holdLowBeam(asGiven, sines, orbit.inverseDistance);
    return {
      declinationDeg: (declinationRad * 180) / Math.PI,
      sunsetHourAngleDeg: (sunsetRad * 180) / Math.PI,
      globalMJM2: sum(steps.global),
      diffuseMJM2: sum(steps.diffuse),
      steps,
      ...parOf(steps, sines),
    };
  };
}

/** One day of `dayLights`. */
export const dayLight = (site: SkySite, date: IsoDate, weather?: Weather): DayLight =>
  dayLights(site, weather)(date);
