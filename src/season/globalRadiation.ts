/** Global radiation of a day from sunshine or from temperatures. */

/** Share of possible sunshine, brought within 0 to 1: recorders can show more than the day length without refraction. */
export function sunshineFraction(sunshineH: number, dayLengthH: number): number {
  if (!(sunshineH >= 0 && dayLengthH >= 0)) {
    throw new Error(`sunshineFraction: hours of 0 or more are needed, got ${sunshineH} of ${dayLengthH}`);
  }
  return dayLengthH === 0 ? 0 : Math.min(1, sunshineH / dayLengthH);
}

/** Default Ångström-Prescott coefficients of FAO-56, for places without their own. */
export const angstromPrescott = { a: 0.25, b: 0.5 } as const;

/**
 * Share of extraterrestrial radiation that reaches the ground (clearness index), 0.25 to 0.75: Ångström-Prescott, FAO-56
 * equation 35 with its default coefficients. Local fits differ: monthly sums from it are within about 10 %.
 */
export const clearnessFromSunshine = (fraction: number): number =>
  angstromPrescott.a + angstromPrescott.b * fraction;

/** Clear-sky share of extraterrestrial radiation at an elevation, FAO-56 equation 37; below about 6000 m. */
export const clearSkyShare = (elevationM: number): number => 0.75 + 2e-5 * elevationM;

/**
 * Global radiation from the day's temperature range, MJ m-2 d-1: Hargreaves & Samani 1982, FAO-56 equation 50.
 * @param coefficient about 0.16 inland, 0.19 on coasts
 */
export function globalFromTemperatureRangeMJM2(
  extraterrestrialMJM2: number,
  maxC: number,
  minC: number,
  coefficient: number,
): number {
  if (!(maxC >= minC))
    throw new Error(
      `globalFromTemperatureRangeMJM2: the maximum is below the minimum, got ${maxC} and ${minC}`,
    );
  return coefficient * Math.sqrt(maxC - minC) * extraterrestrialMJM2;
}
