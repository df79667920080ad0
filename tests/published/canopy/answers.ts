/** Canopies and shade, by our code. */
import type { Receiver, Stem, Surface } from '../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { direction, rad } from '../../../src/geometry/world.ts';
import { irradiance, type Lamp } from '../../../src/light/irradiance.ts';
import { leafOptics } from '../../../src/light/leafOptics.ts';
import { skyDirections } from '../../../src/light/sky/skyDirections.ts';
import type { CaseTable, PublishedCase } from '../caseTable.ts';
import cases from './cases.json' with { type: 'json' };
import {
  deWit,
  ellipsoidal,
  ellipsoidalK,
  level as levelLeaves,
  type Pose,
  spherical as sphericalLeaves,
} from './poses.ts';
import { beamPassed, type Passed, quickStream } from './slab.ts';

const optics = { transmittance: 0, reflectance: 0 };
const steps = [0.5, 0.5, 1, 1, 1];
export const [half, one, two, three, four] = [0, 1, 2, 3, 4] as const;

/**
 * Sine of 2 degrees: lower rays through leaves turned anyhow are taken as lost, since their shade runs over many tiles.
 * They carry 0.0012 of the light, of which a leaf area index of 0.5 passes 0.001.
 */
const dark = 0.035;

/** Of an even sky, what passes leaf area indices 0.5, 1, 2, 3, 4: one slab a direction, by the cosine. */
export function skyPassed(seed: number, pose: Pose, transmittance: number): Passed {
  const draw = quickStream(seed);
  const sums: Passed = { untouched: steps.map(() => 0), arriving: steps.map(() => 0) };
  let open = 0;
  for (const { toSky, solidAngleSr } of skyDirections({ subdivision: 2, seed, wave: 0 })) {
    const weight = solidAngleSr * toSky[1];
    open += weight;
    if (pose !== levelLeaves && toSky[1] < dark) continue;
    const passed = beamPassed({ draw, pose, layers: steps, leafAreaM2: 0.004, transmittance }, toSky);
    for (const which of ['untouched', 'arriving'] as const) {
      sums[which].forEach((sum, i) => {
        sums[which][i] = sum + weight * (passed[which][i] ?? Number.NaN);
      });
    }
  }
  const share = (sum: number): number => sum / open;
  return { untouched: sums.untouched.map(share), arriving: sums.arriving.map(share) };
}

/** Share of a beam passed, mean over 100 slabs, each from another side. */
export function beamThrough(seed: number, pose: Pose, index: number, elevationDeg: number): number {
  const draw = quickStream(seed);
  const slab = { draw, pose, layers: [index], leafAreaM2: 0.001, transmittance: 0 };
  let sum = 0;
  for (let i = 0; i < 100; i++) {
    sum += beamPassed(slab, direction(360 * draw(), elevationDeg)).arriving[0] ?? Number.NaN;
  }
  return sum / 100;
}

const deWitKinds = ['planophile', 'erectophile', 'plagiophile', 'extremophile', 'uniform'] as const;

/** G: mean light on leaves of this pose, both faces taken, in a beam of 1 from that zenith angle. */
function meanProjection(pose: Pose, zenithDeg: number, leaves = 20_000): number {
  const draw = quickStream(75);
  const receivers = Array.from(
    { length: leaves },
    (): Receiver => ({ point: [0, 0, 0], normal: pose(draw), sides: 'both', onSurface: -1 }),
  );
  const light = irradiance({
    surfaces: [],
    receivers,
    lights: [{ toSky: direction(131, 90 - zenithDeg), energy: 1 }],
  });
  return light.reduce((sum, value) => sum + value, 0) / receivers.length;
}

const extinction = (pose: Pose, zenithDeg: number, leaves?: number): number =>
  meanProjection(pose, zenithDeg, leaves) / Math.cos(rad(zenithDeg));

/**
 * E3(x): what a sensor gets under an endless slab of haze of optical depth x, from a sky whose light per sine of elevation is 1. The
 * slab is a crown 2,000 km wide; 4,000 rings of the sky leave 1e-8.
 */
function underHaze(depth: number): number {
  const rings = 4000;
  const lights = Array.from({ length: rings }, (_, i) => {
    const sine = (i + 0.5) / rings;
    return { toSky: [Math.sqrt(1 - sine * sine), sine, 0] as Vec3, energy: 1 / rings };
  });
  const haze: Surface = {
    shape: 'cloud',
    owner: 0,
    optics,
    centre: [0, 0.5, 0],
    halfSizeM: [1e6, 0.5, 1e6],
    extinctionPerM: depth,
  };
  return irradiance({ surfaces: [haze], receivers: [sensor([0, 0, 0])], lights })[0] ?? Number.NaN;
}

/** Share of an even sky that black ellipsoidal leaves pass, by 2,000 rings. */
export function ellipsoidalSky(x: number, index: number): number {
  const rings = 2000;
  let sum = 0;
  for (let i = 0; i < rings; i++) {
    const sine = (i + 0.5) / rings;
    sum += (2 * sine * Math.exp(-ellipsoidalK(x, Math.acos(sine)) * index)) / rings;
  }
  return sum;
}

const sensor = (point: Vec3): Receiver => ({ point, normal: [0, 1, 0], sides: 'one', onSurface: -1 });

/** Where the shade of an upright stake ends on the level, by halving. */
function shadeLengthM(heightM: number, elevationDeg: number): number {
  const stake: Stem = {
    shape: 'stem',
    owner: 0,
    optics,
    from: [0, 0, 0],
    to: [0, heightM, 0],
    fromRadiusM: 1e-4,
    toRadiusM: 1e-4,
  };
  let [shaded, lit] = [0.1, 50];
  while (lit - shaded > 1e-6) {
    const middle = (shaded + lit) / 2;
    const receivers = [sensor([0, 0, middle])];
    const lights = [{ toSky: direction(0, elevationDeg), energy: 1 }];
    if ((irradiance({ surfaces: [stake], receivers, lights })[0] ?? 0) === 0) shaded = middle;
    else lit = middle;
  }
  return (shaded + lit) / 2;
}

/** Even directions over a disc of the given radius round the zenith: rings and sectors of equal solid angle. */
function zenithDisc(radiusDeg: number, rings: number, sectors: number): Lamp[] {
  const cap = 1 - Math.cos(rad(radiusDeg));
  return Array.from({ length: rings * sectors }, (_, i) => {
    const height = 1 - (cap * (Math.floor(i / sectors) + 0.5)) / rings;
    const turn = (2 * Math.PI * ((i % sectors) + 0.5)) / sectors;
    const level = Math.sqrt(1 - height * height);
    return { toSky: [level * Math.cos(turn), height, level * Math.sin(turn)], energy: 1 / (rings * sectors) };
  });
}

const sunRadiusDeg = 0.2667;

/** Width of the half-shade under a straight edge at height 1, lit by a round sun overhead: from the last full light to none. */
function halfShadeWidth(): number {
  const edge: Surface = {
    shape: 'mesh',
    owner: 0,
    optics,
    triangles: [0, 1, -9, 9, 1, -9, 9, 1, 9, 0, 1, -9, 9, 1, 9, 0, 1, 9],
  };
  const receivers = Array.from({ length: 1201 }, (_, i) => sensor([-0.006 + i * 1e-5, 0, 0]));
  const light = irradiance({ surfaces: [edge], receivers, lights: zenithDisc(sunRadiusDeg, 40, 90) });
  return light.filter((share) => share > 1e-9 && share < 0.9999).length * 1e-5;
}

/** Solid angle that a ball of the sun's apparent size hides in a cone of 0.4 degrees round the zenith. */
function ballSolidAngle(): number {
  const ball: Stem = {
    shape: 'stem',
    owner: 0,
    optics,
    from: [0, 1, 0],
    to: [0, 1, 0],
    fromRadiusM: Math.sin(rad(sunRadiusDeg)),
    toRadiusM: Math.sin(rad(sunRadiusDeg)),
  };
  const lights = zenithDisc(0.4, 200, 200);
  const [open, hidden] = [[], [ball]].map(
    (surfaces) => irradiance({ surfaces, receivers: [sensor([0, 0, 0])], lights })[0],
  );
  return (1 - (hidden ?? 0) / (open ?? 0)) * 2 * Math.PI * (1 - Math.cos(rad(0.4)));
}

/** Slabs take seconds: made when first asked for, and once. */
function once<Value>(make: () => Value): () => Value {
  let made: Value | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

export const sphericalSky = once(() => skyPassed(71, sphericalLeaves, 0).arriving);
export const sphericalBeams = once(() =>
  [30, 45, 60, 90].map((elevation) => beamThrough(73, sphericalLeaves, 2, elevation)),
);
export const levelSky = once(() => {
  const { transmittance } = leafOptics({ leafTransmittance: 0.1, leafReflectance: 0.1 });
  return skyPassed(72, levelLeaves, transmittance);
});

export const canopy: CaseTable = {
  cases: cases satisfies PublishedCase[],
  answers: {
    'canopy.E3': () => [0.01, 0.1, 0.25, 0.3, 0.5, 0.55, 1, 1.25, 1.5, 2].map(underHaze),
    'canopy.ellipsoid.x1': () => [0, 60].map((zenith) => extinction(ellipsoidal(1), zenith, 400_000)),
    'canopy.ellipsoid': () =>
      [0.5, 1, 2, 3].flatMap((x) => [0, 30, 60].map((zenith) => extinction(ellipsoidal(x), zenith))),
    'canopy.G': () =>
      [sphericalLeaves, ...deWitKinds.map(deWit)].flatMap((pose) =>
        [0, 30, 57.3, 80].map((zenith) => meanProjection(pose, zenith)),
      ),
    'canopy.diffuse.spherical': sphericalSky,
    'canopy.diffuse.horizontal': () => [one, two, four].map((i) => levelSky().untouched[i] ?? Number.NaN),
    'canopy.beam.spherical': sphericalBeams,
    'shadow.length': () => [30, 45, 60].map((elevation) => shadeLengthM(2, elevation)),
    'shadow.penumbra': halfShadeWidth,
    'shadow.sunsolid': ballSolidAngle,
  },
};
