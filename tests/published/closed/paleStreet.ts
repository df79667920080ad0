/** A sensor on the floor of an endless street between pale walls, light going to and fro between walls and floor. */
import type { Receiver, Surface } from '../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { exposure } from '../../../src/light/exposure.ts';
import { waveDirections } from '../../../src/light/sky/waveDirections.ts';
import { faceLight } from '../../../src/light/thrown/faceLight.ts';
import { zonePatches } from '../../../src/light/thrown/groundZones.ts';
import { beforePatch, throwingPatches } from '../../../src/light/thrown/patches.ts';
import { thrownDirections } from '../../../src/light/thrown/thrownDirections.ts';
import { sceneFinder, tracerByDirection } from '../../../src/light/trace/sceneByDirection.ts';
import { traceWave } from '../../../src/light/trace/wave.ts';
import { evenSky } from './around.ts';

/** Height of the walls of a street 2 m wide, their reflectance, that of the floor. */
export interface Street {
  readonly heightM: number;
  readonly walls: number;
  readonly floor: number;
}

type Point = readonly [across: number, up: number];
interface Strip {
  readonly from: Point;
  readonly to: Point;
  readonly reflectance: number;
}

const away = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** What strip a sends to strip b of all that it sends: Hottel's crossed strings. Nothing stands between any two. */
const share = (a: Strip, b: Strip): number =>
  Math.abs(away(a.from, b.from) + away(a.to, b.to) - away(a.from, b.to) - away(a.to, b.from)) /
  (2 * away(a.from, a.to));

const stripsAFace = 60;

function strips({ heightM, walls, floor }: Street): Strip[] {
  const cut = (at: (s: number) => Point, reflectance: number): Strip[] =>
    Array.from({ length: stripsAFace }, (_, i) => ({
      from: at(i / stripsAFace),
      to: at((i + 1) / stripsAFace),
      reflectance,
    }));
  return [
    ...cut((s) => [-1, s * heightM], walls),
    ...cut((s) => [1, (1 - s) * heightM], walls),
    ...cut((s) => [1 - 2 * s, 0], floor),
  ];
}

/**
 * Light of the sensor in the middle, as share of the open sky's: the radiosity of strips, each evenly lit, solved by going to and fro until
 * nothing changes.
 */
export function streetLight(street: Street): number {
  const all = strips(street);
  const sky: Strip = { from: [-1, street.heightM], to: [1, street.heightM], reflectance: 0 };
  const between = all.map((a) => all.map((b) => (a === b ? 0 : share(a, b))));
  const direct = all.map((a) => share(a, sky));
  let lit = direct;
  for (let round = 0; round < 200; round++) {
    lit = direct.map((value, i) =>
      (between[i] as number[]).reduce(
        (sum, part, j) => sum + part * (all[j]?.reflectance ?? 0) * (lit[j] as number),
        value,
      ),
    );
  }
  const sine = ([across, up]: Point): number => Math.abs(across) / Math.hypot(across, up);
  const fromWalls = all
    .slice(0, 2 * stripsAFace)
    .reduce(
      (sum, { from, to, reflectance }, i) =>
        sum + (Math.abs(sine(from) - sine(to)) / 2) * reflectance * (lit[i] as number),
      0,
    );
  return 1 / Math.hypot(1, street.heightM) + fromWalls;
}

const longM = 1000;

function wall(south: number, heightM: number, reflectance: number): Surface {
  const turn = south < 0 ? 1 : -1;
  const [a, b, c, d]: Vec3[] = [
    [-longM * turn, 0, south],
    [longM * turn, 0, south],
    [longM * turn, heightM, south],
    [-longM * turn, heightM, south],
  ] as Vec3[];
  const triangles = [a, b, c, a, c, d].flat() as number[];
  return { shape: 'mesh', owner: 0, optics: { transmittance: 0, reflectance }, triangles };
}

/** The same by the waves that trees are traced with. */
export function tracedStreetLight({ heightM, walls, floor }: Street, waveCount = 60): number {
  const surfaces = [wall(-1, heightM, walls), wall(1, heightM, walls)];
  const receivers: Receiver[] = [{ point: [0, 0, 0], normal: [0, 1, 0], sides: 'one', onSurface: -1 }];
  const patches = throwingPatches(surfaces, [0, 0, 0]);
  const zones = zonePatches({ eastM: [-longM, longM], southM: [-1, -0.5, 0, 0.5, 1] });
  const scenes = [surfaces, ...patches.map((patch) => beforePatch(surfaces, 0, patch))];
  const waves = Array.from({ length: waveCount }, (_, wave) => {
    const all = waveDirections({ latitudeDeg: 47, seed: 98, wave });
    const lit = [...patches, ...zones];
    const faces = faceLight({ surfaces, patches: lit, directions: all, ownerCount: 1, seed: 98, wave });
    const ball = { middle: [0, 0, 0] as const, radiusM: 0.01 };
    const thrown = thrownDirections({ directions: all, patches, faces, ball, seed: 98, wave });
    const directions = [...all, ...thrown];
    const sceneOf = sceneFinder(directions, ({ thrownBy }) =>
      thrownBy === undefined ? 0 : 1 + thrownBy.patch,
    );
    return traceWave({ surfaces, receivers, directions, ownerCount: 1 }, tracerByDirection(scenes, sceneOf));
  });
  const ledger = { ownerCount: 1, receiverCount: 1, waves, seed: 98 };
  return exposure(ledger, evenSky({}, floor, 0))[0]?.share ?? Number.NaN;
}
