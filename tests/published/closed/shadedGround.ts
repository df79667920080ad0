/** A dark disc above pale ground: light from the ground below, which the disc itself shades. */
import type { Mesh } from '../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { leafExposure } from '../../../src/light/leafExposure.ts';
import { groundZones } from '../../../src/light/thrown/groundZones.ts';
import { lastOf } from '../../../src/light/trace/wave.ts';
import type { CanopyScene } from '../../../src/plan/canopyScene.ts';
import { waveSteps } from '../../../src/plan/canopyWave.ts';
import { evenSky } from './around.ts';
import { discToTheSide } from './forms.ts';

/**
 * Of the light of an even sky a place on the ground gets 1 - F, F being what the disc hides of its sky. It sends its radiance to the disc
 * in proportion to F, so the mean over the disc's lower side is reflectance x 2 / R^2 x the integral of (1 - F) F r dr.
 */
export function underDisc(radiusM: number, heightM: number, reflectance: number): number {
  const [steps, farM] = [20_000, 60 * Math.max(radiusM, heightM)];
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    // Fine near the middle: r = far x u^3.
    const u = (i + 0.5) / steps;
    const hidden = discToTheSide(radiusM, heightM, farM * u ** 3);
    sum += ((1 - hidden) * hidden * farM * u ** 3 * 3 * farM * u ** 2) / steps;
  }
  return (2 * reflectance * sum) / radiusM ** 2;
}

const corners = 40;

/** Of the same area as the circle. */
function disc(radiusM: number, heightM: number): Mesh {
  const r = radiusM * Math.sqrt((2 * Math.PI) / corners / Math.sin((2 * Math.PI) / corners));
  const at = (i: number): Vec3 => {
    const a = (2 * Math.PI * i) / corners;
    return [0.3 + r * Math.cos(a), heightM, r * Math.sin(a) - 0.7];
  };
  const triangles = Array.from({ length: corners }, (_, i): Vec3[] => [
    [0.3, heightM, -0.7],
    at(i),
    at(i + 1),
  ]);
  return {
    shape: 'mesh',
    owner: 1,
    optics: { transmittance: 0, reflectance: 0 },
    triangles: triangles.flat(2),
  };
}

const reachM = 0.01;

/** The same by the waves that trees are traced with; `isShaded` false takes all ground as lit alike. */
export function underTracedDisc(
  radiusM: number,
  heightM: number,
  reflectance: number,
  isShaded = true,
): number {
  const surface = disc(radiusM, heightM);
  const points = Array.from({ length: corners }, (_, i): Vec3 => {
    const at = 9 * i + 3;
    return [0, 1, 2].map((k) => surface.triangles[at + k] as number) as [number, number, number];
  });
  const scene: CanopyScene = {
    surfaces: [surface],
    receivers: [],
    group: Int32Array.of(0),
    ownerCount: 2,
    leafCount: 1,
    leafAreaM2: 0.002,
    fixedByPose: null,
    throwing: null,
    ground: isShaded ? groundZones(points, reachM) : null,
    latitudeDeg: 47,
    seed: 96,
  };
  const waves = Array.from({ length: 24 }, (_, wave) => lastOf(waveSteps({ at: 'leaves', scene, wave })));
  const ledger = { ownerCount: 2, groupCount: 1, waves, seed: 96 };
  return (leafExposure(ledger, evenSky({}, reflectance, 0))[0]?.share ?? Number.NaN) - 1;
}
