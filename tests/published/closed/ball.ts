/** A ball of foliage in a beam, traced both ways: by sensors below it and by rays on its leaves. */
import type { Receiver, Surface } from '../../../src/geometry/surface.ts';
import { anyPerpendicular, cross, scale, type Vec3 } from '../../../src/geometry/vec.ts';
import { direction } from '../../../src/geometry/world.ts';
import { listShares } from '../../../src/light/exposure.ts';
import { traceLeafWave } from '../../../src/light/trace/leafWave.ts';
import { traceWave } from '../../../src/light/trace/wave.ts';
import { anyDirection, type Draw } from '../../light/trace/scene.ts';
import { quickStream } from '../canopy/slab.ts';

const outline = [
  [-0.5, -0.5],
  [0.5, -0.5],
  [0.5, 0.5],
  [-0.5, 0.5],
] as const;

/** Square leaf turned anyhow, its middle anywhere in the ball of radius 1 round the origin. */
function leafInBall(draw: Draw, sideM: number): Surface {
  const normal = anyDirection(draw);
  const along = scale(anyPerpendicular(normal), sideM);
  const middle = scale(anyDirection(draw), Math.cbrt(draw()));
  return {
    shape: 'blade',
    owner: 1,
    optics: { transmittance: 0, reflectance: 0 },
    origin: middle,
    along,
    across: cross(normal, along),
    outline,
  };
}

/** Sensors square to the beam, spread over the disc that the ball covers, behind it. */
function behindBall(toSky: Vec3, count: number): Receiver[] {
  const right = anyPerpendicular(toSky);
  const top = cross(toSky, right);
  return Array.from({ length: count }, (_, i) => {
    const [r, turn] = [Math.sqrt((i + 0.5) / count), i * Math.PI * (3 - Math.sqrt(5))];
    const [a, b] = [r * Math.cos(turn), r * Math.sin(turn)];
    const at = (k: 0 | 1 | 2): number => a * right[k] + b * top[k] - 2 * toSky[k];
    return { point: [at(0), at(1), at(2)], normal: toSky, sides: 'one', onSurface: -1 };
  });
}

const sideM = 0.01;

/**
 * Black leaves turned anyhow, of which `depth` = (leaf area density) x 1/2 x radius. Passed: share of the beam behind the ball. Leaf:
 * mean light on the leaves, the beam square on being 1.
 */
export function lightThroughBall(depth: number, seed: number): { passed: number; leaf: number } {
  const draw = quickStream(seed);
  const areaM2 = (2 * depth * 4 * Math.PI) / 3;
  const count = Math.round(areaM2 / sideM ** 2);
  const surfaces = Array.from({ length: count }, () => leafInBall(draw, sideM));
  const toSky = direction(233, 41);
  const directions = [{ toSky, kind: 'beam', cell: 0 } as const];
  const receivers = behindBall(toSky, 80_000);
  const wave = traceWave({ surfaces, receivers, directions, ownerCount: 2 });
  const shares = listShares(wave);
  const passed =
    Array.from(wave.rayList).reduce((sum, list) => sum + (shares[list] ?? Number.NaN), 0) / receivers.length;
  const leaves = traceLeafWave({
    surfaces,
    group: new Int32Array(count),
    groupCount: 1,
    directions,
    ownerCount: 2,
    spacingM: sideM / 3,
    seed,
    wave: 0,
  });
  // Leaves are black: the first hit of a ray takes all of it.
  const rays = leaves.hitKind.reduce((sum, kind) => sum + (kind < 0 ? 1 : 0), 0);
  return { passed, leaf: (rays * leaves.rayAreaM2) / (count * sideM ** 2) };
}

/** Share of a beam behind a crown drawn as a ball of haze. */
export function throughHaze(depth: number): number {
  const toSky = direction(77, 58);
  const haze: Surface = {
    shape: 'cloud',
    owner: 0,
    optics: { transmittance: 0, reflectance: 0 },
    centre: [0, 0, 0],
    halfSizeM: [1, 1, 1],
    extinctionPerM: depth,
  };
  const receivers = behindBall(toSky, 20_000);
  const directions = [{ toSky, kind: 'beam', cell: 0 } as const];
  const wave = traceWave({ surfaces: [haze], receivers, directions, ownerCount: 1 });
  return Array.from(wave.rayCloudShare ?? []).reduce((sum, share) => sum + share, 0) / receivers.length;
}
