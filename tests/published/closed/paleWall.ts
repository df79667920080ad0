/** A sensor beside a pale wall without end, by the waves that trees are traced with. */
import type { Mesh, Receiver, Surface } from '../../../src/geometry/surface.ts';
import { exposure } from '../../../src/light/exposure.ts';
import { waveDirections } from '../../../src/light/sky/waveDirections.ts';
import { faceLight } from '../../../src/light/thrown/faceLight.ts';
import { beforePatch, throwingPatches } from '../../../src/light/thrown/patches.ts';
import { thrownDirections } from '../../../src/light/thrown/thrownDirections.ts';
import { sceneFinder, tracerByDirection } from '../../../src/light/trace/sceneByDirection.ts';
import { traceWave } from '../../../src/light/trace/wave.ts';
import { evenSky } from './around.ts';

/** In the north at 1 m, facing south. */
const wall = (heightM: number, reflectance: number): Mesh => ({
  shape: 'mesh',
  owner: 0,
  optics: { transmittance: 0, reflectance },
  triangles: [
    [-1000, 0, -1],
    [1000, 0, -1],
    [1000, heightM, -1],
    [-1000, 0, -1],
    [1000, heightM, -1],
    [-1000, heightM, -1],
  ].flat(),
});

/** Share of open sky of a sensor at the wall's foot level, 1 m before it, over ground of a radiance. */
export function besideWall(
  heightM: number,
  reflectance: number,
  { groundRadiance = 0, normal = [0, 1, 0] as Receiver['normal'], waveCount = 60 } = {},
): number {
  const surfaces: readonly Surface[] = [wall(heightM, reflectance)];
  const receivers: Receiver[] = [{ point: [0, 0, 0], normal, sides: 'one', onSurface: -1 }];
  const patches = throwingPatches(surfaces, [0, 0, 0]);
  const scenes = [surfaces, ...patches.map((patch) => beforePatch(surfaces, 0, patch))];
  const waves = Array.from({ length: waveCount }, (_, wave) => {
    const all = waveDirections({ latitudeDeg: 47, seed: 97, wave });
    const faces = faceLight({ surfaces, patches, directions: all, ownerCount: 1, seed: 97, wave });
    const ball = { middle: [0, 0, 0] as const, radiusM: 0.01 };
    const thrown = thrownDirections({ directions: all, patches, faces, ball, seed: 97, wave });
    const directions = [...all, ...thrown];
    const sceneOf = sceneFinder(directions, ({ thrownBy }) =>
      thrownBy === undefined ? 0 : 1 + thrownBy.patch,
    );
    return traceWave({ surfaces, receivers, directions, ownerCount: 1 }, tracerByDirection(scenes, sceneOf));
  });
  const ledger = { ownerCount: 1, receiverCount: 1, waves, seed: 97 };
  return exposure(ledger, evenSky({}, groundRadiance, 0))[0]?.share ?? Number.NaN;
}
