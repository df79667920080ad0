/** What is left of the sun's beam when it stands low. */
import { airMass, meinelShare } from '../../season/clearSky.ts';
import { solarConstantWM2 } from '../../season/extraterrestrial.ts';
import { daySteps } from './daySteps.ts';
import type { RadiationSteps } from './radiationSteps.ts';

/** Our choice: below it the spread of a day over its hours, made for the sun well up, is not believed. */
const lowDeg = 3;
const lowSine = Math.sin((lowDeg * Math.PI) / 180);
/** Beam of a month of sun from rise to set over the radiation above the air: clearness 0.75, diffuse share 0.23 (2.2, 2.4). */
const sunnyBeamClearness = 0.75 * 0.77;
const stepS = 86_400 / daySteps;

/**
 * Where the sun stands below 3 degrees, the beam is held to what a clear sky lets through there, times the day's own beam over that of a sunny day;
 * the rest is light of the sky. The day keeps its global radiation.
 * @param sines of the sun's elevation, step by step
 */
export function holdLowBeam(
  steps: RadiationSteps,
  sines: Float64Array,
  inverseDistance: number,
): RadiationSteps {
  const aboveWM2 = solarConstantWM2 * inverseDistance;
  const beam = steps.global.map((value, i) => value - (steps.diffuse[i] as number));
  let [day, above] = [0, 0];
  sines.forEach((sine, i) => {
    day += beam[i] as number;
    above += (Math.max(0, sine) * aboveWM2 * stepS) / 1e6;
  });
  const sunny = above > 0 ? Math.min(1, day / above / sunnyBeamClearness) : 0;
  const diffuse = steps.diffuse.map((value, i) => {
    const sine = sines[i] as number;
    if (sine >= lowSine || !((beam[i] as number) > 0)) return value;
    const zenithDeg = 90 - (Math.asin(Math.max(0, sine)) * 180) / Math.PI;
    const most = (sunny * aboveWM2 * meinelShare(airMass(zenithDeg)) * Math.max(0, sine) * stepS) / 1e6;
    return value + Math.max(0, (beam[i] as number) - most);
  });
  return { global: steps.global, diffuse };
}
