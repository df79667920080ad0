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
export function clearnessFromSunshine(fraction: number): number {
  if (!(fraction >= 0 && fraction <= 1)) {
    throw new Error(`clearnessFromSunshine: a fraction of 0 to 1 is needed, got ${fraction}`);
  }
  return angstromPrescott.a + angstromPrescott.b * fraction;
}

/** Clear-sky share of extraterrestrial radiation at an elevation, FAO-56 equation 37. Throws above 6000 m. */
export function clearSkyShare(elevationM: number): number {
  if (!(elevationM > -500 && elevationM <= 6000)) {
    throw new Error(`clearSkyShare: an elevation of -500 to 6000 m is needed, got ${elevationM}`);
  }
  return 0.75 + 2e-5 * elevationM;
}

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
  if (!(extraterrestrialMJM2 >= 0 && coefficient >= 0)) {
    throw new Error(
      `globalFromTemperatureRangeMJM2: radiation and coefficient of 0 or more are needed, got ${extraterrestrialMJM2} and ${coefficient}`,
    );
  }
  return coefficient * Math.sqrt(maxC - minC) * extraterrestrialMJM2;
}
