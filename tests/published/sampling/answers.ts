/** Errors of sampling, by our code. */
import type { Surface } from '../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { rad } from '../../../src/geometry/world.ts';
import type { CellLight } from '../../../src/light/directions.ts';
import { exposure } from '../../../src/light/exposure.ts';
import { irradiance } from '../../../src/light/irradiance.ts';
import { traceWave } from '../../../src/light/trace/wave.ts';
import { type Draw, stream } from '../../light/trace/scene.ts';
import type { CaseTable, PublishedCase } from '../caseTable.ts';
import { level, longWall } from '../viewfactors/scenes.ts';
import cases from './cases.json' with { type: 'json' };

type Square = readonly [number, number];

/** Point of the unit square to a direction, as often as its cosine is large. */
function byCosine([u, v]: Square): Vec3 {
  const r = Math.sqrt(u);
  return [r * Math.cos(2 * Math.PI * v), Math.sqrt(1 - u), r * Math.sin(2 * Math.PI * v)];
}

export const receivers = [level([0, 0, 0])];
const evenSky: CellLight = {
  sky: Float64Array.of(1),
  beam: new Float64Array(),
  ground: new Float64Array(),
  openSkyParMolM2Day: 1,
  openBeamParMolM2Day: 0,
  openDiffuseParMolM2Day: 1,
};

/** Mean error that `exposure` states over 40 ledgers of N waves with one random ray each. */
function statedError(surfaces: readonly Surface[], rays: number, seed: number): number {
  const draw = stream(seed);
  let sum = 0;
  for (let run = 0; run < 40; run++) {
    const waves = Array.from({ length: rays }, () => {
      const directions = [{ toSky: byCosine([draw(), draw()]), kind: 'sky', cell: 0 } as const];
      return traceWave({ surfaces, receivers, directions, ownerCount: 1 });
    });
    sum +=
      exposure({ ownerCount: 1, receiverCount: 1, waves, seed }, evenSky)[0]?.standardError ?? Number.NaN;
  }
  return sum / 40;
}

/** An upright wall at the sensor's foot hides half the sky; walls of this height in a street of width 1 leave 0.3 of it. */
const halfHidden = [longWall(1e-6, 1000, 0.3)];
const streetHeight = Math.tan(Math.acos(0.3)) / 2;
const mostHidden = [longWall(0.5, streetHeight, 0.3), longWall(0.5, streetHeight, 0.3 + Math.PI)];

const plastic = 1.324717957244746;
const golden = (Math.sqrt(5) - 1) / 2;
const wrapped = (x: number): number => x - Math.floor(x);

/** N points of the unit square each, all shifted or drawn at random. */
const samplers: Record<string, (n: number, draw: Draw) => Square[]> = {
  random: (n, draw) => Array.from({ length: n }, () => [draw(), draw()] as const),
  jittered: (n, draw) => {
    const side = Math.sqrt(n);
    return Array.from({ length: n }, (_, i) => [
      (Math.floor(i / side) + draw()) / side,
      ((i % side) + draw()) / side,
    ]);
  },
  'R2, shifted': (n, draw) => {
    const [a, b] = [draw(), draw()];
    return Array.from({ length: n }, (_, i) => [wrapped(a + i / plastic), wrapped(b + i / plastic ** 2)]);
  },
  'Fibonacci, shifted': (n, draw) => {
    const [a, b] = [draw(), draw()];
    return Array.from({ length: n }, (_, i) => [wrapped(a + (i + 0.5) / n), wrapped(b + i * golden)]);
  },
};

export const wall = [longWall(1, 1, 0.7)];
export const wallView = (1 + Math.cos(rad(45))) / 2;

function viewBy(points: readonly Square[]): number {
  const lights = points.map((point) => {
    const toSky = byCosine(point);
    return { toSky, energy: 1 / (points.length * toSky[1]) };
  });
  return irradiance({ surfaces: wall, receivers, lights })[0] ?? Number.NaN;
}

/** Slope of log error over log count, by least squares over all counts. */
export function slope(counts: readonly number[], errorOf: (n: number) => number): number {
  const [x, y] = [counts.map(Math.log), counts.map((n) => Math.log(errorOf(n)))];
  const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  const covariance = x.reduce((sum, v, i) => sum + (v - mx) * ((y[i] ?? Number.NaN) - my), 0);
  return covariance / x.reduce((sum, v) => sum + (v - mx) ** 2, 0);
}

export const rootMeanSquare = (runs: number, error: (run: number) => number): number =>
  Math.sqrt(Array.from({ length: runs }, (_, run) => error(run) ** 2).reduce((a, b) => a + b, 0) / runs);

export const sampling: CaseTable = {
  cases: cases satisfies PublishedCase[],
  answers: {
    'mc.binomial': () => [
      statedError(halfHidden, 100, 81),
      statedError(mostHidden, 400, 82),
      statedError(halfHidden, 1000, 83),
    ],
    'mc.slopes': () => {
      const draw = stream(84);
      return Object.values(samplers).map((sampler) =>
        slope([64, 256, 1024, 4096], (n) => rootMeanSquare(80, () => viewBy(sampler(n, draw)) - wallView)),
      );
    },
  },
};
