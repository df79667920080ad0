import type { Slab } from './slab.ts';

/** Triangles of a gable roof on a block about the origin; the ridge runs along its first size, `ridgeM` above the ground. */
export function roofTriangles([width, height, depth]: Slab['size'], ridgeM: number): number[][] {
  const [w, h, d, top] = [width / 2, height / 2, depth / 2, ridgeM - height / 2];
  const [sw, se, ne, nw] = [
    [-w, h, d],
    [w, h, d],
    [w, h, -d],
    [-w, h, -d],
  ] as const;
  const [west, east] = [
    [-w, top, 0],
    [w, top, 0],
  ] as const;
  return [sw, se, east, sw, east, west, ne, nw, west, ne, west, east, se, ne, east, nw, sw, west].map((p) => [
    ...p,
  ]);
}
