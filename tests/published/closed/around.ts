/** Closed forms of what stands around: a skyline all round, a slope, a hedge without end. */
import type { Cloud } from '../../../src/geometry/surface.ts';
import { direction } from '../../../src/geometry/world.ts';
import type { CellLight, Direction } from '../../../src/light/directions.ts';
import { rayWeights } from '../../../src/light/rayWeights.ts';
import { groundPatches, skyPatches } from '../../../src/light/sky/cells.ts';
import { type HorizonSite, horizonOf } from '../../../src/light/sky/horizon.ts';
import { waveDirections } from '../../../src/light/sky/waveDirections.ts';
import { parallelBeamTracer } from '../../../src/light/trace/parallelBeam.ts';
import { level, viewOf } from '../viewfactors/scenes.ts';

/** An even sky of radiance 1; what hides it has the radiances given. */
export function evenSky(site: HorizonSite, groundRadiance: number, skylineRadiance: number): CellLight {
  const horizon = horizonOf(site);
  return {
    sky: Float64Array.from(skyPatches, ({ solidAngleSr }) => solidAngleSr),
    beam: new Float64Array(432),
    ground: Float64Array.from(groundPatches, ({ solidAngleSr }) => groundRadiance * solidAngleSr),
    openSkyParMolM2Day: Math.PI,
    openBeamParMolM2Day: 0,
    openDiffuseParMolM2Day: Math.PI,
    ...(horizon && { hiding: { horizon, groundRadiance, skylineRadiance } }),
  };
}

const waveCount = 200;

/** Share of open sky of a level sensor with nothing near it, by the waves that trees are traced with. */
export function levelUnder(site: HorizonSite, groundRadiance = 0, skylineRadiance = 0): number {
  const waves = Array.from({ length: waveCount }, (_, wave) => ({
    directions: waveDirections({ latitudeDeg: 47, seed: 95, wave }),
  }));
  const weights = rayWeights({ waves }, evenSky(site, groundRadiance, skylineRadiance));
  const got = ({ toSky }: Direction, weight: number): number => weight * Math.max(0, toSky[1]);
  return (
    waves.reduce(
      (sum, { directions }, w) =>
        sum + directions.reduce((part, d, i) => part + got(d, weights[w]?.weight[i] ?? Number.NaN), 0),
      0,
    ) / waveCount
  );
}

/** A skyline of one height all round, given at two bearings. */
export const skylineAllRound = (heightDeg: number): HorizonSite => ({
  skyline: {
    reflectance: 0,
    points: [
      { bearingDeg: 250, heightDeg },
      { bearingDeg: 40, heightDeg },
    ],
  },
});

const hedge = (halfSizeM: Cloud['halfSizeM'], extinctionPerM: number): Cloud => ({
  shape: 'cloud',
  form: 'box',
  owner: 0,
  optics: { transmittance: 0, reflectance: 0 },
  centre: [0, 5, 0],
  halfSizeM,
  turnedDeg: 33,
  extinctionPerM,
});

/** Even light behind a layer of leaves 1 m deep without end, square to the sensor. */
export const behindLayer = (depth: number): number => viewOf([hedge([5000, 0.5, 5000], depth)]);

/** A beam through the middle of an upright hedge 0.8 m thick, its long side towards bearing 123, of 2 m-1. */
export function throughHedge(bearing: number, elevation: number): number {
  const receiver = { ...level([0, 5, 0]), sides: 'both' as const };
  let passed = 1;
  parallelBeamTracer([hedge([50, 20, 0.4], 2)], [receiver])(
    direction(bearing, elevation),
    (_r, _s, share) => {
      passed *= share;
    },
  );
  return passed;
}
