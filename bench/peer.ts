/** The same scene as triangles in a bounding-volume tree of the library three-mesh-bvh, with all hits of a ray. */
import { BufferAttribute, BufferGeometry, DoubleSide, Ray } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { fan } from '../src/geometry/outline.ts';
import type { Blade, Stem, Surface } from '../src/geometry/surface.ts';
import { add, anyPerpendicular, cross, normalize, scale, sub, type Vec3 } from '../src/geometry/vec.ts';

const stemSides = 6;

function bladeTriangles({ origin, along, across, outline }: Blade, into: number[]): number {
  const triangles = fan(outline, [0.02, 0]);
  for (const corners of triangles) {
    for (const [u, v] of corners) into.push(...add(origin, add(scale(along, u), scale(across, v))));
  }
  return triangles.length;
}

function stemTriangles({ from, to, fromRadiusM, toRadiusM }: Stem, into: number[]): number {
  const axis = normalize(sub(to, from));
  const side = anyPerpendicular(axis);
  const other = cross(axis, side);
  const rim = (centre: Vec3, radius: number, k: number): Vec3 => {
    const turn = (2 * Math.PI * k) / stemSides;
    return add(centre, add(scale(side, radius * Math.cos(turn)), scale(other, radius * Math.sin(turn))));
  };
  for (let k = 0; k < stemSides; k++) {
    const [a, b] = [rim(from, fromRadiusM, k), rim(from, fromRadiusM, k + 1)];
    const [c, d] = [rim(to, toRadiusM, k), rim(to, toRadiusM, k + 1)];
    into.push(...a, ...b, ...c, ...b, ...d, ...c);
  }
  return 2 * stemSides;
}

export interface Peer {
  readonly triangleCount: number;
  /** Surfaces met by each ray but its own, with repeats; returns how many in all. */
  readonly trace: (points: Float64Array, onSurface: Int32Array, toSky: Vec3) => number;
}

export function makePeer(surfaces: readonly Surface[]): Peer {
  const [corners, owners]: [number[], number[]] = [[], []];
  surfaces.forEach((surface, index) => {
    let count = 0;
    if (surface.shape === 'blade') count = bladeTriangles(surface, corners);
    if (surface.shape === 'stem') count = stemTriangles(surface, corners);
    for (let k = 0; k < count; k++) owners.push(index);
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(corners), 3));
  const bvh = new MeshBVH(geometry, { indirect: true });
  const surfaceOf = Int32Array.from(owners);
  const ray = new Ray();
  return {
    triangleCount: owners.length,
    trace: (points, onSurface, [x, y, z]) => {
      ray.direction.set(x, y, z);
      let count = 0;
      onSurface.forEach((own, k) => {
        ray.origin.fromArray(points, 3 * k);
        for (const { faceIndex } of bvh.raycast(ray, DoubleSide)) {
          if (surfaceOf[faceIndex ?? -1] !== own) count++;
        }
      });
      return count;
    },
  };
}
