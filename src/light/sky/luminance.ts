/** How bright the parts of a sky are, relative to its zenith. */

/**
 * Parameters a, b (brightening towards the horizon), c, d, e (brightening towards the sun) of the fifteen skies of
 * CIE S 011/E:2003 = ISO 15469:2004. Entry 0 is type 1, the standard overcast sky; type 5 is uniform, type 12 clear.
 */
export const cieSkies = [
  [4, -0.7, 0, -1, 0],
  [4, -0.7, 2, -1.5, 0.15],
  [1.1, -0.8, 0, -1, 0],
  [1.1, -0.8, 2, -1.5, 0.15],
  [0, -1, 0, -1, 0],
  [0, -1, 2, -1.5, 0.15],
  [0, -1, 5, -2.5, 0.3],
  [0, -1, 10, -3, 0.45],
  [-1, -0.55, 2, -1.5, 0.15],
  [-1, -0.55, 5, -2.5, 0.3],
  [-1, -0.55, 10, -3, 0.45],
  [-1, -0.32, 10, -3, 0.45],
  [-1, -0.32, 16, -3, 0.3],
  [-1, -0.15, 16, -3, 0.3],
  [-1, -0.15, 24, -2.8, 0.15],
] as const;

/** Number of a sky of `cieSkies`, 1 to 15. */
export type CieSkyType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 13 | 14 | 15;

const rad = Math.PI / 180;

function cieSky(type: number): (typeof cieSkies)[number] {
  const sky = Number.isInteger(type) ? cieSkies[type - 1] : undefined;
  if (sky === undefined) throw new Error(`cieSky: a type from 1 to 15 is needed, got ${type}`);
  return sky;
}

/** Gradation: how a sky changes with the distance from the zenith, 0 to 90 degrees; 1 at the horizon. */
export function cieGradation(type: number, zenithDeg: number): number {
  if (!(zenithDeg >= 0 && zenithDeg <= 90))
    throw new Error(`cieGradation: a zenith angle of 0 to 90 is needed, got ${zenithDeg}`);
  const [a, b] = cieSky(type);
  return zenithDeg === 90 ? 1 : 1 + a * Math.exp(b / Math.cos(zenithDeg * rad));
}

/** Indicatrix: how a sky changes with the distance from the sun, 0 to 180 degrees; 1 at 90. */
export function cieIndicatrix(type: number, sunAngleDeg: number): number {
  if (!(sunAngleDeg >= 0 && sunAngleDeg <= 180))
    throw new Error(`cieIndicatrix: an angle of 0 to 180 is needed, got ${sunAngleDeg}`);
  const [, , c, d, e] = cieSky(type);
  const chi = sunAngleDeg * rad;
  return 1 + c * (Math.exp(d * chi) - Math.exp((d * Math.PI) / 2)) + e * Math.cos(chi) ** 2;
}

/**
 * Luminance over that of the zenith, ISO 15469 equation 1.
 * @param zenithDeg of the point of the sky
 * @param fromSunAzimuthDeg bearing of the point minus that of the sun
 */
export function cieRelativeLuminance(
  type: number,
  zenithDeg: number,
  fromSunAzimuthDeg: number,
  sunZenithDeg: number,
): number {
  const cosAngle =
    Math.cos(sunZenithDeg * rad) * Math.cos(zenithDeg * rad) +
    Math.sin(sunZenithDeg * rad) * Math.sin(zenithDeg * rad) * Math.cos(fromSunAzimuthDeg * rad);
  const sunAngleDeg = Math.acos(Math.min(1, Math.max(-1, cosAngle))) / rad;
  const here = cieIndicatrix(type, sunAngleDeg) * cieGradation(type, zenithDeg);
  return here / (cieIndicatrix(type, sunZenithDeg) * cieGradation(type, 0));
}

/**
 * Overcast sky of Moon & Spencer 1942: a third as bright at the horizon as at the zenith. Near to CIE type 1, not the
 * same: the level gets 7 pi / 9 of the zenith's radiance here and 2.450 there.
 */
export function moonSpencer(elevationDeg: number): number {
  if (!(elevationDeg >= 0 && elevationDeg <= 90)) {
    throw new Error(`moonSpencer: an elevation of 0 to 90 is needed, got ${elevationDeg}`);
  }
  return (1 + 2 * Math.sin(elevationDeg * rad)) / 3;
}

/** Share of a uniform sky's light on the level that a tilted sensor gets, without ground: Liu & Jordan 1963. */
export function uniformSkyOnTilt(tiltDeg: number): number {
  if (!(tiltDeg >= 0 && tiltDeg <= 180)) {
    throw new Error(`uniformSkyOnTilt: a tilt of 0 to 180 is needed, got ${tiltDeg}`);
  }
  return (1 + Math.cos(tiltDeg * rad)) / 2;
}
