/** Scenes whose view of an even sky is known in closed form. Receivers sit at the origin unless told otherwise. */
import type { Mesh, Receiver, Stem, Surface } from '../../../src/geometry/surface.ts';
import type { Vec3 } from '../../../src/geometry/vec.ts';
import { skyView } from '../../../src/light/irradiance.ts';
import { skyDirections } from '../../../src/light/sky/skyDirections.ts';

const optics = { transmittance: 0, reflectance: 0 };

export const level = (point: Vec3): Receiver => ({ point, normal: [0, 1, 0], sides: 'one', onSurface: -1 });

/** A flat four-sided sheet, its corners in turn. */
export function sheet(a: Vec3, b: Vec3, c: Vec3, d: Vec3): Mesh {
  return { shape: 'mesh', owner: 0, optics, triangles: [...a, ...b, ...c, ...a, ...c, ...d] };
}

/** A level disc of 360 sides. */
export function disc(centre: Vec3, radiusM: number): Surface {
  const outline = Array.from({ length: 360 }, (_, i) => {
    const turn = ((i + 0.5) * Math.PI) / 180;
    return [Math.cos(turn), Math.sin(turn)] as const;
  });
  return {
    shape: 'blade',
    owner: 0,
    optics,
    origin: centre,
    along: [radiusM, 0, 0],
    across: [0, 0, radiusM],
    outline,
  };
}

/** A tube with round ends; a ball where both ends are one place. */
export const tube = (from: Vec3, to: Vec3, radiusM: number): Stem => ({
  shape: 'stem',
  owner: 0,
  optics,
  from,
  to,
  fromRadiusM: radiusM,
  toRadiusM: radiusM,
});

/** Level sensors spread evenly over a disc round the origin, on a golden spiral. */
export function discField(radiusM: number, count: number): Receiver[] {
  return Array.from({ length: count }, (_, i) => {
    const r = radiusM * Math.sqrt((i + 0.5) / count);
    const turn = i * Math.PI * (3 - Math.sqrt(5));
    return level([r * Math.cos(turn), 0, r * Math.sin(turn)]);
  });
}

/** A wall of height `heightM` at `distanceM` towards a bearing-free direction (cos, sin), 1,000 units either way. */
export function longWall(distanceM: number, heightM: number, turn: number, halfLengthM = 1000): Mesh {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const at = (along: number, up: number): Vec3 => [distanceM * c - along * s, up, distanceM * s + along * c];
  return sheet(at(-halfLengthM, 0), at(halfLengthM, 0), at(halfLengthM, heightM), at(-halfLengthM, heightM));
}

/** A rim of 90 flat pieces round a circle of radius 1. */
export function rim(heightM: number): Mesh {
  const triangles: number[] = [];
  const at = (i: number, up: number): Vec3 => {
    const turn = (i * Math.PI) / 180;
    return [Math.cos(turn), up, Math.sin(turn)];
  };
  for (let i = 0; i < 360; i += 4) {
    triangles.push(...at(i, 0), ...at(i + 4, 0), ...at(i + 4, heightM));
    triangles.push(...at(i, 0), ...at(i + 4, heightM), ...at(i, heightM));
  }
  return { shape: 'mesh', owner: 0, optics, triangles };
}

/** Mean over waves of the receivers' mean view of an even sky. */
export function meanView(
  surfaces: readonly Surface[],
  receivers: readonly Receiver[],
  { subdivision, waves }: { subdivision: number; waves: number },
): number {
  let sum = 0;
  for (let wave = 0; wave < waves; wave++) {
    const pieces = skyDirections({ subdivision, seed: 61, wave });
    for (const view of skyView({ surfaces, receivers, pieces })) sum += view;
  }
  return sum / waves / receivers.length;
}

/** What one sensor sees: 20,740 rays. */
export const viewOf = (surfaces: readonly Surface[], receiver: Receiver = level([0, 0, 0])): number =>
  meanView(surfaces, [receiver], { subdivision: 6, waves: 4 });

/** Level sensors in the middles of n x n fields of the rectangle 0 to a by 0 to b. */
export function field(a: number, b: number, n: number): Receiver[] {
  return Array.from({ length: n * n }, (_, i) =>
    level([((Math.floor(i / n) + 0.5) / n) * a, 0, (((i % n) + 0.5) / n) * b]),
  );
}

/** Share of the light leaving some fields that falls on the surfaces. */
export const viewFactorFrom = (
  fields: readonly Receiver[],
  surfaces: readonly Surface[],
  effort: { subdivision: number; waves: number },
): number => 1 - meanView(surfaces, fields, effort);
