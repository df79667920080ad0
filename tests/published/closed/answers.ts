/** Closed forms, by our code. */
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { rad } from '../../../src/geometry/world.ts';
import { moonSpencer } from '../../../src/light/sky/luminance.ts';
import { beamThrough, ellipsoidalSky, skyPassed } from '../canopy/answers.ts';
import { ellipsoidal, ellipsoidalK, level as levelLeaves, upright } from '../canopy/poses.ts';
import type { CaseTable, PublishedCase } from '../caseTable.ts';
import { irradianceOf, moonLevel } from '../sky/answers.ts';
import { disc, level, longWall, viewOf } from '../viewfactors/scenes.ts';
import { behindLayer, levelUnder, skylineAllRound, throughHedge } from './around.ts';
import { lightThroughBall, throughHaze } from './ball.ts';
import { takenInBox } from './box.ts';
import {
  aboveElevation,
  betweenTops,
  discToTheSide,
  throughBall,
  throughUpright,
  uprightSky,
} from './forms.ts';
import { streetLight, tracedStreetLight } from './paleStreet.ts';
import { besideWall } from './paleWall.ts';
import { underDisc, underTracedDisc } from './shadedGround.ts';

interface ClosedForm {
  readonly quantity: string;
  readonly inputs: object;
  readonly expected: readonly number[];
  readonly ours: () => readonly number[];
  readonly tolerance: number;
  readonly source: string;
  readonly toleranceFloor: string;
}

const indices = [0.5, 1, 2, 3, 4];
const slabFloor = 'random slabs of leaves: 100 of them, or one for each of 577 directions of the sky';
const skyFloor =
  'random slabs of leaves, one for each of 577 directions of the sky: standard deviation 0.0015';
const wallFloor = '144,000 directions of the sky, in rings and sectors';
const rayFloor = '20,740 rays of one sensor';

const beams = [
  [0.7, 25],
  [1.6, 52],
  [2.4, 71],
] as const;
const ellipsoidBeams = [
  [0.5, 1.7, 33],
  [0.5, 0.8, 71],
  [2, 1.7, 33],
  [2, 1.1, 71],
] as const;
const discs = [
  [1, 1, 0.7],
  [0.6, 1.3, 1.1],
  [2, 0.8, 1.7],
] as const;
/** Direction in the plane across the walls, at an angle from the level. */
const inPlane = (angleDeg: number): Vec3 => [Math.cos(rad(angleDeg)), Math.sin(rad(angleDeg)), 0];
/** A wall whose top stands at that angle from the sensor, 90 being straight above: in the east below 90, in the west above. */
const wallUpTo = (angleDeg: number) =>
  angleDeg < 90
    ? longWall(1, Math.tan(rad(angleDeg)), 0)
    : longWall(1, Math.tan(rad(180 - angleDeg)), Math.PI);

/** Sensor's normal, and the tops of the walls that bound the sky, in degrees from the level in the east over the zenith. */
const streets = [
  [90, 30, 180],
  [90, 25, 132],
  [0, 40, 180],
  [62, 35, 180],
  [131, 35, 120],
  [180, 20, 150],
] as const;
/** Where the sensor's own half-space ends, if that is before the wall's top. */
const seen = ([normal, from, to]: (typeof streets)[number]) =>
  [Math.max(from, normal - 90), Math.min(to, normal + 90)] as const;
const wallsOf = ([, from, to]: (typeof streets)[number]) =>
  [from, to].filter((top) => top > 0 && top < 180).map(wallUpTo);

const slabs: readonly ClosedForm[] = [
  {
    quantity: 'beam through level leaves, L 0.7, 1.6, 2.4 at elevation 25, 52, 71: exp(-L)',
    inputs: { beams },
    expected: beams.map(([index]) => Math.exp(-index)),
    ours: () => beams.map(([index, elevation]) => beamThrough(74, levelLeaves, index, elevation)),
    tolerance: 0.003,
    source: 'Monsi & Saeki 1953, closed form',
    toleranceFloor: slabFloor,
  },
  {
    quantity: 'beam through upright leaves, L 0.7, 1.6, 2.4 at elevation 25, 52, 71: exp(-2 L / (pi tan b))',
    inputs: { beams },
    expected: beams.map(([index, elevation]) => throughUpright(index, elevation)),
    ours: () => beams.map(([index, elevation]) => beamThrough(81, upright, index, elevation)),
    tolerance: 0.003,
    source: 'Ross 1981, closed form',
    toleranceFloor: slabFloor,
  },
  {
    quantity: 'even sky through upright leaves, L 0.5, 1, 2, 3, 4',
    inputs: { indices },
    expected: indices.map(uprightSky),
    ours: () => skyPassed(82, upright, 0).arriving,
    tolerance: 0.005,
    source: 'Ross 1981, integrated over the sky',
    toleranceFloor: skyFloor,
  },
  {
    quantity: 'beam through ellipsoidal leaves, x 0.5 and 2 at two elevations',
    inputs: { ellipsoidBeams },
    expected: ellipsoidBeams.map(([x, index, elevation]) =>
      Math.exp(-ellipsoidalK(x, rad(90 - elevation)) * index),
    ),
    ours: () =>
      ellipsoidBeams.map(([x, index, elevation]) => beamThrough(78, ellipsoidal(x), index, elevation)),
    tolerance: 0.003,
    source: 'Campbell 1990 Agric. For. Meteorol. 49:173, closed form',
    toleranceFloor: slabFloor,
  },
  ...([0.5, 2] as const).map((x) => ({
    quantity: `even sky through ellipsoidal leaves, x ${x}, L 0.5, 1, 2, 3, 4`,
    inputs: { x, indices },
    expected: indices.map((index) => ellipsoidalSky(x, index)),
    ours: () => skyPassed(75 + 2 * x, ellipsoidal(x), 0).arriving,
    tolerance: 0.003,
    source: 'Campbell 1990 Agric. For. Meteorol. 49:173, integrated over the sky',
    toleranceFloor: slabFloor,
  })),
];

const balls: readonly ClosedForm[] = [
  {
    quantity:
      'beam behind a ball of 12,600 and 62,800 leaves turned anyhow, depth 0.15 and 0.75 to its middle',
    inputs: { depths: [0.15, 0.75] },
    expected: [0.15, 0.75].map(throughBall),
    ours: () => [0.15, 0.75].map((depth) => lightThroughBall(depth, 91).passed),
    tolerance: 0.005,
    source: 'closed form of the mean path through a ball',
    toleranceFloor: 'leaves placed at random, and those that stand out of the ball by half their width',
  },
  {
    quantity: 'light on the leaves of the same balls: what is taken out of the beam, over their area',
    inputs: { depths: [0.15, 0.75] },
    expected: [0.15, 0.75].map((depth) => (Math.PI * (1 - throughBall(depth))) / ((8 * depth * Math.PI) / 3)),
    ours: () => [0.15, 0.75].map((depth) => lightThroughBall(depth, 91).leaf),
    tolerance: 0.005,
    source: 'closed form of the mean path through a ball',
    toleranceFloor: 'leaves placed at random, and those that stand out of the ball by half their width',
  },
  {
    quantity: "beam behind a neighbour's crown drawn as a ball of haze, depth 0.2, 0.8, 2.5 to its middle",
    inputs: { depths: [0.2, 0.8, 2.5] },
    expected: [0.2, 0.8, 2.5].map(throughBall),
    ours: () => [0.2, 0.8, 2.5].map(throughHaze),
    tolerance: 0.0002,
    source: 'closed form of the mean path through a ball',
    toleranceFloor: '20,000 sensors on a golden spiral',
  },
];

const obstructions: readonly ClosedForm[] = [
  ...(['even', 'overcast'] as const).map((kind) => ({
    quantity: `level, upright and leaning sensors between long walls, ${kind} sky, over the open level`,
    inputs: { streets },
    expected: streets.map((street) => betweenTops(kind, street[0], ...seen(street))),
    ours: () =>
      streets.map((street) => {
        const normals = [inPlane(street[0])];
        const luminance = kind === 'even' ? () => 1 : moonSpencer;
        const open = kind === 'even' ? Math.PI : moonLevel;
        return (irradianceOf(luminance, normals, wallsOf(street))[0] ?? Number.NaN) / open;
      }),
    tolerance: 0.001,
    source:
      kind === 'even' ? "Hottel's crossed strings" : 'Moon & Spencer 1942 sky, integrated in closed form',
    toleranceFloor: wallFloor,
  })),
  {
    quantity: 'share of an overcast sky hidden by a disc overhead, its edge 30, 45, 60 degrees up',
    inputs: { edges: [30, 45, 60] },
    expected: [30, 45, 60].map(aboveElevation),
    ours: () =>
      [30, 45, 60].map((up) => {
        const overhead = disc([0, Math.tan(rad(up)), 0], 1);
        return 1 - (irradianceOf(moonSpencer, [[0, 1, 0]], [overhead])[0] ?? Number.NaN) / moonLevel;
      }),
    tolerance: 0.0025,
    source: 'Moon & Spencer 1942 sky, integrated in closed form',
    toleranceFloor: 'the edge lies within one of the 400 rings',
  },
  {
    quantity:
      'share of the sky hidden by a disc off the axis: radius, height, offset 1, 1, 0.7; 0.6, 1.3, 1.1; 2, 0.8, 1.7',
    inputs: { discs },
    expected: discs.map(([r, h, a]) => discToTheSide(r, h, a)),
    ours: () => discs.map(([r, h, a]) => 1 - viewOf([disc([0.6 * a, h, -0.8 * a], r)], level([0, 0, 0]))),
    tolerance: 0.002,
    source: 'Howell, A catalog of radiation heat transfer configuration factors, B-13',
    toleranceFloor: rayFloor,
  },
];

const energy: readonly ClosedForm[] = [0, 0.3].map((transmittance) => ({
  quantity: `closed box with an opening above and 400 leaves that pass ${transmittance}: what floor, walls and leaves take of what comes in`,
  inputs: { transmittance },
  expected: [1],
  ours: () => {
    const { sides, leaves } = takenInBox(transmittance, 93);
    return [sides + leaves];
  },
  tolerance: 0.004,
  source: 'conservation of energy',
  toleranceFloor: 'sampling: 2,000 sensors and 12 waves of rays on the leaves',
}));

const heights = [7, 19, 38];
const slopes = [6, 14, 29];
const depths = [0.5, 1, 2];
/** Bearing and elevation. */
const throughSides = [
  [33, 0],
  [93, 0],
  [33, 50],
  [228, 31],
] as const;
const waveFloor = '200 waves of 145 rays of one sensor: standard deviation 0.001';

const around: readonly ClosedForm[] = [
  {
    quantity: 'share of an even sky above a skyline 7, 19, 38 degrees high all round: cos^2',
    inputs: { heights },
    expected: heights.map((height) => Math.cos(rad(height)) ** 2),
    ours: () => heights.map((height) => levelUnder(skylineAllRound(height))),
    tolerance: 0.003,
    source: 'Oke 1987, basin view factors',
    toleranceFloor: waveFloor,
  },
  {
    quantity: 'the same with a skyline half as bright as the sky: cos^2 + sin^2 / 2',
    inputs: { heights },
    expected: heights.map((height) => 1 - Math.sin(rad(height)) ** 2 / 2),
    ours: () => heights.map((height) => levelUnder(skylineAllRound(height), 0, 0.5)),
    tolerance: 0.003,
    source: 'Oke 1987, basin view factors',
    toleranceFloor: waveFloor,
  },
  {
    quantity: 'share of an even sky of a level sensor on a slope of 6, 14, 29 degrees: (1 + cos) / 2',
    inputs: { slopes },
    expected: slopes.map((slope) => (1 + Math.cos(rad(slope))) / 2),
    ours: () => slopes.map((slopeDeg) => levelUnder({ slope: { slopeDeg, fallsToDeg: 157 } })),
    tolerance: 0.003,
    source: 'Liu & Jordan 1963 Solar Energy 7:53',
    toleranceFloor: waveFloor,
  },
  {
    quantity: 'even light behind an endless hedge, depth 0.5, 1, 2: 2 E3(depth)',
    inputs: { depths },
    // E3 of Abramowitz & Stegun 1964, table 5.4.
    expected: [0.2216044, 0.1096919, 0.0301334].map((e3) => 2 * e3),
    ours: () => depths.map(behindLayer),
    tolerance: 0.001,
    source: 'Abramowitz & Stegun 1964, table 5.4',
    toleranceFloor: rayFloor,
  },
  {
    quantity:
      'beam from the middle of a hedge square on, 60 degrees askew, 50 and 31 degrees up: by path length',
    inputs: { throughSides },
    expected: throughSides.map(([bearing, elevation]) =>
      Math.exp(-0.8 / Math.abs(Math.cos(rad(elevation)) * Math.cos(rad(bearing - 33)))),
    ),
    ours: () => throughSides.map(([bearing, elevation]) => throughHedge(bearing, elevation)),
    tolerance: 1e-9,
    source: 'Beer-Lambert law, closed form',
    toleranceFloor: 'rounding',
  },
];

/** Height of the wall over its distance, its reflectance, radiance of the ground (1 the sky's). */
const paleWalls = [
  [1, 0, 0],
  [1, 0.6, 0],
  [2.5, 0.6, 0.3],
  [0.5, 0.9, 0.2],
] as const;

const thrown: readonly ClosedForm[] = [
  {
    quantity:
      'level sensor by an endless wall of height 1, 1, 2.5, 0.5 at distance 1 that throws back 0, 0.6, 0.6, 0.9: (1 + cos b) / 2 + r E (1 - cos b) / 2',
    inputs: { paleWalls },
    // The upright wall gets E: half of what the sky sends the level, and half of the ground's.
    expected: paleWalls.map(([height, reflectance, ground]) => {
      const cosine = Math.cos(Math.atan(height));
      return (1 + cosine) / 2 + (reflectance * ((1 + ground) / 2) * (1 - cosine)) / 2;
    }),
    ours: () =>
      paleWalls.map(([height, reflectance, groundRadiance]) =>
        besideWall(height, reflectance, { groundRadiance }),
      ),
    tolerance: 0.005,
    source: "Hottel's crossed strings and Lambert's law",
    toleranceFloor: '60 waves of 145 rays of one sensor: standard deviation 0.0015',
  },
  {
    quantity: 'upright sensor that looks at such a wall, height 2.5, reflectance 0.6',
    inputs: { height: 2.5, reflectance: 0.6 },
    expected: [2.5].map((height) => {
      const sine = Math.sin(Math.atan(height));
      return (1 - sine) / 2 + (0.6 * 0.5 * sine) / 2;
    }),
    ours: () => [besideWall(2.5, 0.6, { normal: [0, 0, -1] })],
    tolerance: 0.005,
    source: "Hottel's crossed strings and Lambert's law",
    toleranceFloor: '60 waves of 145 rays of one sensor: standard deviation 0.0015',
  },
];

/** Radius of the disc, its height, reflectance of the ground. */
const aboveGround = [
  [1, 0.5, 0.3],
  [1, 1, 0.3],
  [0.7, 1.4, 0.5],
] as const;

const shaded: readonly ClosedForm[] = [
  {
    quantity:
      'light of an even sky from the ground below a dark disc on its lower side: radius 1, 1, 0.7 at height 0.5, 1, 1.4, reflectance 0.3, 0.3, 0.5',
    inputs: { aboveGround },
    expected: aboveGround.map(([radius, height, pale]) => underDisc(radius, height, pale)),
    ours: () => aboveGround.map(([radius, height, pale]) => underTracedDisc(radius, height, pale)),
    tolerance: 0.012,
    source: 'Howell B-13 and reciprocity, integrated over the ground',
    toleranceFloor: 'the ground is lit zone by zone, quarters of the disc wide; 24 waves',
  },
];

const paleStreets = [
  { heightM: 1, walls: 0.6, floor: 0 },
  { heightM: 1, walls: 0.6, floor: 0.3 },
  { heightM: 3, walls: 0.6, floor: 0.3 },
  { heightM: 3, walls: 0.8, floor: 0.3 },
] as const;

const toAndFro: readonly ClosedForm[] = [
  {
    quantity:
      'level sensor in a street 2 m wide between endless walls 1, 1, 3, 3 m high that throw back 0.6, 0.6, 0.6, 0.8, over a floor of 0, 0.3, 0.3, 0.3, with all bounces',
    inputs: { paleStreets },
    expected: paleStreets.map(streetLight),
    ours: () => paleStreets.map((street) => tracedStreetLight(street)),
    tolerance: 0.01,
    source: "Hottel's crossed strings between 180 strips, radiosity solved",
    toleranceFloor: 'each wall is lit as two strips, the floor as four; 60 waves of 145 rays of one sensor',
  },
];

const forms = [...slabs, ...balls, ...obstructions, ...energy, ...around, ...thrown, ...shaded, ...toAndFro];
const idOf = (i: number): string => `closed.${i + 1}`;

export const closed: CaseTable = {
  cases: forms.map(
    ({ quantity, inputs, expected, tolerance, source, toleranceFloor }, i): PublishedCase => ({
      id: idOf(i),
      quantity,
      inputs,
      expected,
      unit: '-',
      tolerance,
      relative: false,
      strength: 'A',
      source,
      fromMemory: false,
      toleranceFloor,
    }),
  ),
  answers: Object.fromEntries(forms.map(({ ours }, i) => [idOf(i), ours])),
};
