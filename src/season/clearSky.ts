/** Light under a cloudless sky, and the air it passes. */

const rad = Math.PI / 180;

/**
 * Relative air mass: Kasten & Young 1989 (Applied Optics 28:4735), equation 3, for apparent zenith angles of 0 to 90
 * degrees; within 0.5 % of their table. Throws outside, where there is no sun to speak of.
 */
export function airMass(apparentZenithDeg: number): number {
  if (!(apparentZenithDeg >= 0 && apparentZenithDeg <= 90)) {
    throw new Error(`airMass: a zenith angle of 0 to 90 degrees is needed, got ${apparentZenithDeg}`);
  }
  return 1 / (Math.cos(apparentZenithDeg * rad) + 0.50572 * (96.07995 - apparentZenithDeg) ** -1.6364);
}

/**
 * Share of the beam that a clear sky lets through: Meinel & Meinel 1976, Applied Solar Energy, 0.7 ^ (air mass ^ 0.678). It was fitted to
 * the sun well up; towards the horizon it is an extrapolation.
 */
export function meinelShare(mass: number): number {
  if (!(mass >= 0)) throw new Error(`meinelShare: an air mass of 0 or more is needed, got ${mass}`);
  return 0.7 ** (mass ** 0.678);
}

/** Air pressure in the standard atmosphere, Pa: Portland State Aerospace Society 2004; below 11 km. */
export function pressurePa(elevationM: number): number {
  if (!(elevationM > -5000 && elevationM <= 11_000)) {
    throw new Error(`pressurePa: an elevation of -5000 to 11000 m is needed, got ${elevationM}`);
  }
  return 100 * ((44_331.514 - elevationM) / 11_880.516) ** (1 / 0.1902632);
}

/** Clear-sky global irradiance, W m-2: Haurwitz 1945 (J. Meteorology 2:154); 0 with the sun below the horizon. */
export function haurwitzWM2(elevationDeg: number): number {
  if (!Number.isFinite(elevationDeg))
    throw new Error(`haurwitzWM2: a finite elevation is needed, got ${elevationDeg}`);
  const cosZenith = Math.sin(elevationDeg * rad);
  return cosZenith <= 0 ? 0 : 1098 * cosZenith * Math.exp(-0.059 / cosZenith);
}

export interface ClearSky {
  readonly globalWM2: number;
  /** Square to the sun. */
  readonly beamNormalWM2: number;
  readonly diffuseWM2: number;
}

/**
 * Clear sky from one transmittance: Campbell & Norman 1998, An Introduction to Environmental Biophysics, equations
 * 11.11 to 11.13. The air mass is pressure / (101325 cos zenith), too large below some 10 degrees of elevation.
 * @param transmittance 0.6 to 0.7 under a very clear sky, 0.4 and less in haze
 * @param extraterrestrialWM2 square to the sun
 */
export function campbellNorman(
  zenithDeg: number,
  transmittance: number,
  airPressurePa: number,
  extraterrestrialWM2: number,
): ClearSky {
  if (![zenithDeg, transmittance, airPressurePa, extraterrestrialWM2].every(Number.isFinite)) {
    throw new Error('campbellNorman: finite numbers are needed');
  }
  if (!(transmittance > 0 && transmittance <= 1 && airPressurePa >= 0)) {
    throw new Error(
      `campbellNorman: a transmittance of 0 to 1 and a pressure of 0 or more are needed, got ${transmittance} and ${airPressurePa}`,
    );
  }
  const cosZenith = Math.cos(zenithDeg * rad);
  if (cosZenith <= 0) return { globalWM2: 0, beamNormalWM2: 0, diffuseWM2: 0 };
  const passed = transmittance ** (airPressurePa / 101_325 / cosZenith);
  const beamNormalWM2 = passed * extraterrestrialWM2;
  const diffuseWM2 = 0.3 * (1 - passed) * extraterrestrialWM2 * cosZenith;
  return { globalWM2: beamNormalWM2 * cosZenith + diffuseWM2, beamNormalWM2, diffuseWM2 };
}
