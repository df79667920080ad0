/** What each of many rays from one place meets first. */
import {
  type Blade,
  fixedOwner,
  type Mesh,
  type Receiver,
  type Stem,
  type Surface,
} from '../../geometry/surface.ts';
import { add, cross, distance, dot, lerp, scale, sub, type Vec3 } from '../../geometry/vec.ts';
import { checkScene } from '../trace/checkScene.ts';
import { meetsBlade, meetsStem, meetsTriangle, pathInCloudM, spanInCloudM } from '../trace/meet.ts';

/** One ball round a surface, or round one triangle of a mesh. */
interface Ball {
  readonly surface: number;
  readonly triangle: number;
  readonly centre: Vec3;
  readonly radiusM: number;
}

/** What a ray has come through. Index as the directions. */
export interface Met {
  /** Index of the surface that is met first; -1 for none. */
  readonly first: Int32Array;
  /** Share of the light that comes through everything on the ray. */
  readonly passed: Float32Array;
  /** The same with the tree's own leaves as dark as wood: what comes straight, past them. */
  readonly straight: Float32Array;
}

const cornerOf = ({ triangles }: Mesh, triangle: number, which: number): Vec3 => {
  const at = 9 * triangle + 3 * which;
  return [triangles[at] as number, triangles[at + 1] as number, triangles[at + 2] as number];
};

const cornersOf = (mesh: Mesh, triangle: number): [Vec3, Vec3, Vec3] => [
  cornerOf(mesh, triangle, 0),
  cornerOf(mesh, triangle, 1),
  cornerOf(mesh, triangle, 2),
];

function ballRound(surface: number, triangle: number, points: readonly Vec3[], moreM = 0): Ball {
  const sum = points.reduce((total, point) => add(total, point), [0, 0, 0] as Vec3);
  const centre = scale(sum, 1 / points.length);
  return { surface, triangle, centre, radiusM: moreM + Math.max(...points.map((p) => distance(p, centre))) };
}

function ballsOf(surface: Surface, index: number): Ball[] {
  switch (surface.shape) {
    case 'mesh':
      return Array.from({ length: surface.triangles.length / 9 }, (_, triangle) =>
        ballRound(index, triangle, cornersOf(surface, triangle)),
      );
    case 'blade': {
      const { origin, along, across, outline } = surface;
      return [
        ballRound(
          index,
          0,
          outline.map(([u, v]) => add(origin, add(scale(along, u), scale(across, v)))),
        ),
      ];
    }
    case 'stem':
      return [
        ballRound(index, 0, [surface.from, surface.to], Math.max(surface.fromRadiusM, surface.toRadiusM)),
      ];
    case 'cloud':
      return [
        { surface: index, triangle: 0, centre: surface.centre, radiusM: Math.hypot(...surface.halfSizeM) },
      ];
  }
}

const toPlaneM = (point: Vec3, normal: Vec3, from: Vec3, toSky: Vec3): number =>
  dot(sub(point, from), normal) / dot(normal, toSky);

/** Distance along the ray to where it comes nearest to the stem's centre line: within a few radii of its bark. */
function toStemM({ from: low, to: high }: Stem, from: Vec3, toSky: Vec3): number {
  const axis = sub(high, low);
  const lengthSquared = dot(axis, axis);
  const back = sub(from, low);
  const along = dot(axis, toSky);
  const square = lengthSquared - along * along;
  const nearest =
    square > 1e-12 * lengthSquared ? (dot(axis, back) - along * dot(back, toSky)) / square : 0.5;
  const place = lerp(low, high, Math.min(1, Math.max(0, nearest)));
  return Math.max(0, dot(sub(place, from), toSky));
}

const toBladeM = ({ origin, along, across }: Blade, from: Vec3, toSky: Vec3): number =>
  toPlaneM(origin, cross(along, across), from, toSky);

/** Distance to the surface and share that passes it; null when the ray misses it. */
function meeting(surface: Surface, triangle: number, from: Vec3, toSky: Vec3): [number, number] | null {
  const { transmittance } = surface.optics;
  switch (surface.shape) {
    case 'mesh': {
      const [a, b, c] = cornersOf(surface, triangle);
      if (!meetsTriangle(a, b, c, from, toSky)) return null;
      return [toPlaneM(a, cross(sub(b, a), sub(c, a)), from, toSky), transmittance];
    }
    case 'blade':
      return meetsBlade(surface, from, toSky) ? [toBladeM(surface, from, toSky), transmittance] : null;
    case 'stem':
      return meetsStem(surface, from, toSky) ? [toStemM(surface, from, toSky), transmittance] : null;
    case 'cloud': {
      const pathM = pathInCloudM(surface, from, toSky);
      return pathM > 0
        ? [Math.max(0, spanInCloudM(surface, from, toSky)[0]), Math.exp(-surface.extinctionPerM * pathM)]
        : null;
    }
  }
}

const surfacesAStep = 64;

/** Follows the rays past one shape, or one triangle of one. */
function followPast(
  { surface: index, triangle, centre, radiusM }: Ball,
  surface: Surface,
  point: Vec3,
  rays: { readonly directions: readonly Vec3[]; readonly nearestM: Float64Array; readonly met: Met },
): void {
  const { directions, nearestM, met } = rays;
  const to = sub(centre, point);
  const awaySquared = dot(to, to) - radiusM ** 2;
  // A ray touches the ball where it lies this far ahead along it, or farther.
  const leastM = awaySquared > 0 ? Math.sqrt(awaySquared) * (1 - 1e-9) : -Infinity;
  const [x, y, z] = to;
  for (let d = 0; d < directions.length; d++) {
    const toSky = directions[d] as Vec3;
    if (x * toSky[0] + y * toSky[1] + z * toSky[2] < leastM) continue;
    const meets = meeting(surface, triangle, point, toSky);
    if (meets === null) continue;
    const [atM, share] = meets;
    if (atM < (nearestM[d] as number)) {
      nearestM[d] = atM;
      met.first[d] = index;
    }
    met.passed[d] = (met.passed[d] as number) * share;
    met.straight[d] = (met.straight[d] as number) * (surface.owner === fixedOwner ? share : 0);
  }
}

/**
 * Follows a ray from the receiver along each direction, whatever side it faces. Only rays that come near the ball round a
 * shape are tested, by the plain tests of the slow tracer. Hands over after every 64 surfaces with the share done. Throws on an
 * unsound scene.
 */
export function* firstMetSteps(
  surfaces: readonly Surface[],
  receiver: Receiver,
  directions: readonly Vec3[],
): Generator<number, Met, void> {
  checkScene(surfaces, [receiver]);
  const count = directions.length;
  const met: Met = {
    first: new Int32Array(count).fill(-1),
    passed: new Float32Array(count).fill(1),
    straight: new Float32Array(count).fill(1),
  };
  const rays = { directions, met, nearestM: new Float64Array(count).fill(Infinity) };
  for (const [index, surface] of surfaces.entries()) {
    if (index > 0 && index % surfacesAStep === 0) yield index / surfaces.length;
    if (index === receiver.onSurface) continue;
    for (const ball of ballsOf(surface, index)) followPast(ball, surface, receiver.point, rays);
  }
  return met;
}
