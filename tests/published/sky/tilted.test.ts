/**
 * Leaning sensors under the all-weather sky beside the published model of the same authors for just these: Perez, Ineichen, Seals,
 * Michalsky & Stewart 1990, Solar Energy 44:271, equation 9 and table 6 ("all sites composite", from two transcriptions). Both were fitted
 * to measurements, each for its own purpose; neither was fitted to the other.
 */
import { describe, expect, test } from 'vitest';
import {
  type MeasuredSky,
  perezLuminance,
  skyBrightness,
  skyClearness,
} from '../../../src/light/sky/perez.ts';

const rad = Math.PI / 180;
const edges = [1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2];
const table = [
  [-0.008, 0.588, -0.062, -0.06, 0.072, -0.022],
  [0.13, 0.683, -0.151, -0.019, 0.066, -0.029],
  [0.33, 0.487, -0.221, 0.055, -0.064, -0.026],
  [0.568, 0.187, -0.295, 0.109, -0.152, -0.014],
  [0.873, -0.392, -0.362, 0.226, -0.462, 0.001],
  [1.132, -1.237, -0.412, 0.288, -0.823, 0.056],
  [1.06, -1.6, -0.359, 0.264, -1.127, 0.131],
  [0.678, -0.327, -0.25, 0.156, -1.377, 0.251],
] as const;

/** Sensor's tilt from the level and bearing of its normal from the sun's, degrees. */
interface Pose {
  readonly tiltDeg: number;
  readonly awayDeg: number;
}

const cosToSun = ({ tiltDeg, awayDeg }: Pose, sunZenithDeg: number): number =>
  Math.cos(tiltDeg * rad) * Math.cos(sunZenithDeg * rad) +
  Math.sin(tiltDeg * rad) * Math.sin(sunZenithDeg * rad) * Math.cos(awayDeg * rad);

/** Sky light of a leaning sensor over that on the level, as published. */
function published(sky: MeasuredSky, pose: Pose): number {
  const clearness = skyClearness(sky);
  const row = table[edges.filter((edge) => clearness >= edge).length] as (typeof table)[number];
  const [brightness, zenith] = [skyBrightness(sky), sky.sunZenithDeg * rad];
  const round = Math.max(0, row[0] + row[1] * brightness + row[2] * zenith);
  const low = row[3] + row[4] * brightness + row[5] * zenith;
  const ratio =
    Math.max(0, cosToSun(pose, sky.sunZenithDeg)) / Math.max(Math.cos(85 * rad), Math.cos(zenith));
  const tilt = pose.tiltDeg * rad;
  return ((1 - round) * (1 + Math.cos(tilt))) / 2 + round * ratio + low * Math.sin(tilt);
}

/** The same by the brightness we give the sky, in 90 rings and 180 sectors. */
function ours(sky: MeasuredSky, { tiltDeg, awayDeg }: Pose): number {
  const luminance = perezLuminance(sky);
  const [rings, sectors] = [90, 180];
  let [leaning, level] = [0, 0];
  for (let i = 0; i < rings; i++) {
    const sine = (i + 0.5) / rings;
    const zenithDeg = Math.acos(sine) / rad;
    for (let k = 0; k < sectors; k++) {
      const bearing = (360 * (k + 0.5)) / sectors;
      const toSun = cosToSun({ tiltDeg: zenithDeg, awayDeg: bearing }, sky.sunZenithDeg);
      const value = luminance(zenithDeg, Math.acos(Math.min(1, Math.max(-1, toSun))) / rad);
      const onSensor =
        Math.cos(tiltDeg * rad) * sine +
        Math.sin(tiltDeg * rad) * Math.sin(zenithDeg * rad) * Math.cos((bearing - awayDeg) * rad);
      leaning += value * Math.max(0, onSensor);
      level += value * sine;
    }
  }
  return leaning / level;
}

/** Zenith angle of the sun, diffuse light on the level and beam square to the sun, W m-2; the largest difference found, rounded up. */
const skies = [
  ['overcast', 48, 150, 0, 0.025],
  ['thick cloud', 40, 310, 30, 0.18],
  ['broken cloud', 53, 243, 200, 0.2],
  ['thin cloud', 35, 260, 420, 0.07],
  ['half clear', 57, 150, 480, 0.085],
  ['clear', 41, 97, 861, 0.06],
  ['clear, low sun', 70, 65, 600, 0.24],
] as const;
const poses = [40, 90].flatMap((tiltDeg) => [0, 90, 180].map((awayDeg) => ({ tiltDeg, awayDeg })));
const rms = (values: readonly number[]): number => Math.hypot(...values) / Math.sqrt(values.length);

describe('sensors that lean by 40 and 90 degrees to the sun, aside and away from it, over the level', () => {
  test.each(skies)(
    'differ from the published model by what docs/model.md states: %s',
    (name, sunZenithDeg, diffuseWM2, beamNormalWM2, most) => {
      const sky = { sunZenithDeg, diffuseWM2, beamNormalWM2, aboveWM2: 1367 };
      const differences = poses.map((pose) => ours(sky, pose) - published(sky, pose));
      for (const difference of differences) expect(Math.abs(difference)).toBeLessThan(most);
      const even = poses.map((pose) => (1 + Math.cos(pose.tiltDeg * rad)) / 2 - published(sky, pose));
      // Under thick cloud the two models part: an even sky is as near as ours.
      expect(rms(differences)).toBeLessThan(rms(even) * (name === 'thick cloud' ? 1.2 : 0.7));
    },
  );
});
