/** Flat outlines: closed polygons of points [u, v], first point not repeated, in either turn. */
export type Outline = readonly (readonly [number, number])[];

/** The least upright rectangle round an outline. */
export interface OutlineBox {
  readonly minU: number;
  readonly minV: number;
  readonly maxU: number;
  readonly maxV: number;
}

/** Area with its sign: above 0 when the points run anticlockwise (u to the right, v up). Gauss's shoelace formula. */
export function signedArea(outline: Outline): number {
  let doubled = 0;
  let previous = outline[outline.length - 1];
  for (const point of outline) {
    if (previous !== undefined) doubled += previous[0] * point[1] - point[0] * previous[1];
    previous = point;
  }
  return doubled / 2;
}

/** Area of an outline that does not cross itself, in the square of its unit. */
export const outlineArea = (outline: Outline): number => Math.abs(signedArea(outline));

/** Throws when the outline has no points. */
export function outlineBox(outline: Outline): OutlineBox {
  if (outline.length === 0) throw new Error('outlineBox: an outline needs points, got none');
  let [minU, minV, maxU, maxV] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [u, v] of outline) {
    minU = Math.min(minU, u);
    minV = Math.min(minV, v);
    maxU = Math.max(maxU, u);
    maxV = Math.max(maxV, v);
  }
  return { minU, minV, maxU, maxV };
}

/**
 * Whether a point lies inside, by counting the edges to its right (even-odd rule, so that a part enclosed
 * twice is outside). A point on an edge is in exactly one of two outlines that share the edge.
 */
export function isInside(outline: Outline, u: number, v: number): boolean {
  let inside = false;
  let previous = outline[outline.length - 1];
  for (const point of outline) {
    if (previous !== undefined && point[1] > v !== previous[1] > v) {
      const crossingU =
        previous[0] + ((v - previous[1]) / (point[1] - previous[1])) * (point[0] - previous[0]);
      if (u < crossingU) inside = !inside;
    }
    previous = point;
  }
  return inside;
}

/**
 * Triangles of an outline that is star-shaped seen from `hub`: a fan round the hub, one triangle an edge.
 * Three points each: hub, edge start, edge end. Edges that the hub lies on give no triangle.
 * Throws when the outline is not star-shaped from there, since the fan would then cover itself.
 */
export function fan(
  outline: Outline,
  hub: readonly [number, number],
): readonly (readonly [readonly [number, number], readonly [number, number], readonly [number, number]])[] {
  const turn = Math.sign(signedArea(outline));
  const triangles = [];
  let previous = outline[outline.length - 1];
  for (const point of outline) {
    if (previous !== undefined) {
      const doubled = turn * signedArea([hub, previous, point]);
      if (doubled < 0) {
        throw new Error(`fan: the edge at [${point.join(', ')}] faces away from the hub [${hub.join(', ')}]`);
      }
      if (doubled > 0) triangles.push([hub, previous, point] as const);
    }
    previous = point;
  }
  return triangles;
}
