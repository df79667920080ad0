/** The sky as it goes with the light measured: from overcast through broken to clear. */
import { airMass } from '../../season/clearSky.ts';

const rad = Math.PI / 180;

/** Clearness at which each of the eight kinds of sky begins; below the second the sky is overcast. */
const beginAt = [1, 1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2] as const;

/**
 * Table 1 of Perez, Seals & Michalsky 1993 (Solar Energy 50:235): a row a kind of sky; a1 to a4, then b, c, d and e. The
 * digits were compared with two independent transcriptions.
 */
const table = [
  [
    1.3525, -0.2576, -0.269, -1.4366, -0.767, 0.0007, 1.2734, -0.1233, 2.8, 0.6004, 1.2375, 1, 1.8734, 0.6297,
    0.9738, 0.2809, 0.0356, -0.1246, -0.5718, 0.9938,
  ],
  [
    -1.2219, -0.773, 1.4148, 1.1016, -0.2054, 0.0367, -3.9128, 0.9156, 6.975, 0.1774, 6.4477, -0.1239,
    -1.5798, -0.5081, -1.7812, 0.108, 0.2624, 0.0672, -0.219, -0.4285,
  ],
  [
    -1.1, -0.2515, 0.8952, 0.0156, 0.2782, -0.1812, -4.5, 1.1766, 24.7219, -13.0812, -37.7, 34.8438, -5,
    1.5218, 3.9229, -2.6204, -0.0156, 0.1597, 0.4199, -0.5562,
  ],
  [
    -0.5484, -0.6654, -0.2672, 0.7117, 0.7234, -0.6219, -5.6812, 2.6297, 33.3389, -18.3, -62.25, 52.0781,
    -3.5, 0.0016, 1.1477, 0.1062, 0.4659, -0.3296, -0.0876, -0.0329,
  ],
  [
    -0.6, -0.3566, -2.5, 2.325, 0.2937, 0.0496, -5.6812, 1.8415, 21, -4.7656, -21.5906, 7.2492, -3.5, -0.1554,
    1.4062, 0.3988, 0.0032, 0.0766, -0.0656, -0.1294,
  ],
  [
    -1.0156, -0.367, 1.0078, 1.4051, 0.2875, -0.5328, -3.85, 3.375, 14, -0.9999, -7.1406, 7.5469, -3.4,
    -0.1078, -1.075, 1.5702, -0.0672, 0.4016, 0.3017, -0.4844,
  ],
  [
    -1, 0.0211, 0.5025, -0.5119, -0.3, 0.1922, 0.7023, -1.6317, 19, -5, 1.2438, -1.9094, -4, 0.025, 0.3844,
    0.2656, 1.0468, -0.3788, -2.4517, 1.4656,
  ],
  [
    -1.05, 0.0289, 0.426, 0.359, -0.325, 0.1156, 0.7781, 0.0025, 31.0625, -14.5, -46.1148, 55.375, -7.2312,
    0.405, 13.35, 0.6234, 1.5, -0.6426, 1.8564, 0.5636,
  ],
] as const;

export interface MeasuredSky {
  /** 0 to 90; taken as 87 at most, where the beam square to the sun can still be told from its trace on the level. */
  readonly sunZenithDeg: number;
  /** On the level, W m-2. */
  readonly diffuseWM2: number;
  /** Square to the sun, W m-2. */
  readonly beamNormalWM2: number;
  /** Square to the sun above the air, W m-2. */
  readonly aboveWM2: number;
}

/** Luminance relative to any, from the zenith angle of a point of the sky (0 to 90) and its distance from the sun, degrees. */
export type Luminance = (zenithDeg: number, sunAngleDeg: number) => number;

/**
 * Sky clearness (equation 1 there): 1 under an overcast sky, 6 and more under a very clear one. Its constant is 1.041 for
 * angles in radians.
 */
export function skyClearness({ sunZenithDeg, diffuseWM2, beamNormalWM2 }: MeasuredSky): number {
  const low = 1.041 * (Math.min(87, sunZenithDeg) * rad) ** 3;
  return ((diffuseWM2 + beamNormalWM2) / diffuseWM2 + low) / (1 + low);
}

/**
 * Sky brightness (equation 2 there), brought within what was measured: 0.01 to 0.6, and under broken skies (clearness 1.065 to
 * 2.8) not below 0.2, where b of the fit turns positive and the horizon would go black.
 */
export function skyBrightness(sky: MeasuredSky): number {
  const { sunZenithDeg, diffuseWM2, aboveWM2 } = sky;
  const clearness = skyClearness(sky);
  const least = clearness >= 1.065 && clearness < 2.8 ? 0.2 : 0.01;
  const brightness = (airMass(Math.min(87, sunZenithDeg)) * diffuseWM2) / aboveWM2;
  return Math.min(0.6, Math.max(least, brightness));
}

/**
 * All-weather sky of Perez, Seals & Michalsky 1993: [1 + a exp(b / cos zenith)] [1 + c exp(d angle) + e cos2 angle], with a to e
 * from the clearness, the brightness and the sun's zenith angle. Where the fit would fall below 0 (dark corners of some broken
 * skies) it is 0. Throws without diffuse light.
 */
export function perezLuminance(sky: MeasuredSky): Luminance {
  const { sunZenithDeg, diffuseWM2, beamNormalWM2, aboveWM2 } = sky;
  if (!(diffuseWM2 > 0 && beamNormalWM2 >= 0 && aboveWM2 > 0 && sunZenithDeg >= 0 && sunZenithDeg <= 90)) {
    throw new Error(
      `perezLuminance: diffuse light and a sun above the level are needed, got ${diffuseWM2}, ${beamNormalWM2}, ${aboveWM2} and ${sunZenithDeg}`,
    );
  }
  const [a, b, c, d, e] = coefficients(
    skyClearness(sky),
    skyBrightness(sky),
    Math.min(87, sunZenithDeg) * rad,
  );
  return (zenithDeg, sunAngleDeg) => {
    const gradation = 1 + a * Math.exp(b / Math.cos(Math.min(89.9, zenithDeg) * rad));
    const angle = sunAngleDeg * rad;
    const ring = 1 + c * Math.exp(d * angle) + e * Math.cos(angle) ** 2;
    return Math.max(0, gradation * ring);
  };
}

function coefficients(
  clearness: number,
  brightness: number,
  z: number,
): [number, number, number, number, number] {
  const kind = Math.max(
    0,
    beginAt.findLastIndex((begin) => clearness >= begin),
  );
  const row = table[kind] as (typeof table)[number];
  const fit = (from: 0 | 4 | 8 | 12 | 16): number =>
    row[from] + row[(from + 1) as 1] * z + brightness * (row[(from + 2) as 2] + row[(from + 3) as 3] * z);
  const overcast = kind === 0;
  const c = overcast ? Math.exp((brightness * (row[8] + row[9] * z)) ** row[10]) - row[11] : fit(8);
  const d = overcast
    ? -Math.exp(brightness * (row[12] + row[13] * z)) + row[14] + brightness * row[15]
    : fit(12);
  return [fit(0), fit(4), c, d, fit(16)];
}
