import { beforeAll, describe, expect, test } from 'vitest';
import type { Receiver, Stem, Surface } from '../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { direction, rad } from '../../../src/geometry/world.ts';
import { irradiance, type Lamp } from '../../../src/light/irradiance.ts';
import { leafOptics } from '../../../src/light/leafOptics.ts';
import { skyDirections } from '../../../src/light/sky/skyDirections.ts';
import { checkCases, type PublishedCase } from '../caseTable.ts';
import cases from './cases.json' with { type: 'json' };
import { e3 } from './exponentialIntegral.ts';
import { beamPassed, type Passed, type Pose, quickStream } from './slab.ts';

const optics = { transmittance: 0, reflectance: 0 };
const steps = [0.5, 0.5, 1, 1, 1];
const [half, one, two, three, four] = [0, 1, 2, 3, 4];

/**
 * Sine of 2 degrees: lower rays through leaves turned anyhow are taken as lost, since their shade runs over many tiles.
 * They carry 0.0012 of the light, of which a leaf area index of 0.5 passes 0.001.
 */
const dark = 0.035;

/** Of an even sky, what passes leaf area indices 0.5, 1, 2, 3, 4: one slab a direction, by the cosine. */
function skyPassed(seed: number, pose: Pose, transmittance: number): Passed {
  const draw = quickStream(seed);
  const sums: Passed = { untouched: steps.map(() => 0), arriving: steps.map(() => 0) };
  let open = 0;
  for (const { toSky, solidAngleSr } of skyDirections({ subdivision: 2, seed, wave: 0 })) {
    const weight = solidAngleSr * toSky[1];
    open += weight;
    if (pose === 'spherical' && toSky[1] < dark) continue;
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
function beamThrough(seed: number, pose: Pose, index: number, elevationDeg: number): number {
  const draw = quickStream(seed);
  const slab = { draw, pose, layers: [index], leafAreaM2: 0.001, transmittance: 0 };
  let sum = 0;
  for (let i = 0; i < 100; i++) {
    sum += beamPassed(slab, direction(360 * draw(), elevationDeg)).arriving[0] ?? Number.NaN;
  }
  return sum / 100;
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

describe('canopies and shade', () => {
  let spherical: number[] = [];
  let level: number[] = [];
  let beams: number[] = [];
  let levelScattering: number[] = [];
  const scattering = leafOptics({ leafTransmittance: 0.1, leafReflectance: 0.1 });
  beforeAll(() => {
    spherical = skyPassed(71, 'spherical', 0).arriving;
    beams = [30, 45, 60, 90].map((elevation) => beamThrough(73, 'spherical', 2, elevation));
    const scattered = skyPassed(72, 'level', scattering.transmittance);
    [level, levelScattering] = [scattered.untouched, scattered.arriving];
  }, 120_000);

  checkCases(cases satisfies PublishedCase[], {
    'canopy.E3': () => [0.01, 0.1, 0.25, 0.3, 0.5, 0.55, 1, 1.25, 1.5, 2].map(e3),
    'canopy.diffuse.spherical': () => spherical,
    'canopy.diffuse.horizontal': () => [one, two, four].map((i) => level[i] ?? Number.NaN),
    'canopy.beam.spherical': () => beams,
    'shadow.length': () => [30, 45, 60].map((elevation) => shadeLengthM(2, elevation)),
    'shadow.penumbra': halfShadeWidth,
    'shadow.sunsolid': ballSolidAngle,
  });

  test('level leaves pass exp(-L) of a beam too, at any elevation (Monsi and Saeki 1953; 100 slabs: 0.003)', () => {
    for (const [index, elevation] of [
      [0.7, 25],
      [1.6, 52],
    ] as const) {
      expect(Math.abs(beamThrough(74, 'level', index, elevation) - Math.exp(-index))).toBeLessThan(0.003);
    }
  }, 30_000);

  test('the slabs get thinner with every layer taken away, and the same for both poses only at the zenith', () => {
    for (const passed of [spherical, level]) expect(passed).toEqual(passed.toSorted((a, b) => b - a));
    expect((spherical[half] ?? 0) - (level[half] ?? 0)).toBeGreaterThan(0.03);
    expect((spherical[three] ?? 0) - (level[three] ?? 0)).toBeGreaterThan(0.05);
  });

  test('scattering leaves pass 1.11, 1.23 and 1.52 times what black ones do at L 1, 2, 4 (Goudriaan 1977, from memory)', () => {
    // Level leaves, reflectance and transmittance 0.1. The tolerance is set by the random slabs: 2 % of exp(-4).
    const ratios = [one, two, four].map((i) => (levelScattering[i] ?? Number.NaN) / (level[i] ?? Number.NaN));
    [1.11, 1.23, 1.52].forEach((published, i) => {
      expect(Math.abs((ratios[i] ?? Number.NaN) / published - 1)).toBeLessThan(0.02);
    });
  });
});
