/** An outline as a small picture, so that most points are found inside or outside without walking its edges. */
import { isInside, type Outline, outlineBox } from '../../geometry/outline.ts';

export const maskSide = 64;
export const maskOutside = 0;
export const maskInside = 1;
export const maskBorder = 2;

/**
 * The outline in mask units: its box runs from 0 to `maskSide` both ways, u = minU + across / scaleU and the same for v.
 * Texel (i, j) is `texel[j * maskSide + i]`: wholly outside, wholly inside, or border, where only the outline can tell.
 */
export interface OutlineMask {
  readonly minU: number;
  readonly minV: number;
  /** Mask units per unit of u and v; 0 for an outline without area, which covers nothing. */
  readonly scaleU: number;
  readonly scaleV: number;
  readonly texel: Uint8Array;
  /** Edges that reach into row j: rowStart[j] to rowStart[j + 1] (excluded). An edge is listed in each of its rows. */
  readonly rowStart: Int32Array;
  /** Four numbers an edge: across and up of its start and of its end, mask units. */
  readonly edge: Float64Array;
}

/** Marks every texel that the edge comes near: box against segment by separating axes, with a hair to spare. */
function markEdge(texel: Uint8Array, a: readonly [number, number], b: readonly [number, number]): void {
  const spare = 1e-6;
  const clamp = (x: number): number => Math.min(maskSide - 1, Math.max(0, Math.floor(x)));
  const [across, up] = [b[0] - a[0], b[1] - a[1]];
  const reach = (0.5 + spare) * (Math.abs(across) + Math.abs(up)) + spare;
  for (let j = clamp(Math.min(a[1], b[1]) - spare); j <= clamp(Math.max(a[1], b[1]) + spare); j++) {
    for (let i = clamp(Math.min(a[0], b[0]) - spare); i <= clamp(Math.max(a[0], b[0]) + spare); i++) {
      const off = across * (j + 0.5 - a[1]) - up * (i + 0.5 - a[0]);
      if (Math.abs(off) <= reach) texel[j * maskSide + i] = maskBorder;
    }
  }
}

/** Between two border texels of a row all texels are alike, so one of them is asked for all. */
function fillInside(texel: Uint8Array, points: Outline): void {
  for (let j = 0; j < maskSide; j++) {
    let run: number | null = null;
    for (let i = 0; i < maskSide; i++) {
      const at = j * maskSide + i;
      if (texel[at] === maskBorder) run = null;
      else {
        run ??= isInside(points, i + 0.5, j + 0.5) ? maskInside : maskOutside;
        texel[at] = run;
      }
    }
  }
}

function edgesByRow(points: Outline): { rowStart: Int32Array; edge: Float64Array } {
  const rowStart = new Int32Array(maskSide + 1);
  const edge: number[] = [];
  for (let j = 0; j < maskSide; j++) {
    let previous = points[points.length - 1];
    for (const point of points) {
      if (previous !== undefined && previous[1] !== point[1]) {
        const [low, high] = [Math.min(previous[1], point[1]), Math.max(previous[1], point[1])];
        if (low <= j + 1 && high >= j) edge.push(previous[0], previous[1], point[0], point[1]);
      }
      previous = point;
    }
    rowStart[j + 1] = edge.length / 4;
  }
  return { rowStart, edge: Float64Array.from(edge) };
}

/** Whether a place in a border texel lies inside the outline: `isInside`, asking the edges of its row alone. */
export function isInsideBorder({ rowStart, edge }: OutlineMask, across: number, up: number): boolean {
  const row = up | 0;
  const end = 4 * (rowStart[row + 1] as number);
  let inside = false;
  for (let at = 4 * (rowStart[row] as number); at < end; at += 4) {
    const low = edge[at + 1] as number;
    const high = edge[at + 3] as number;
    if (high > up !== low > up) {
      const from = edge[at] as number;
      if (across < from + ((up - low) / (high - low)) * ((edge[at + 2] as number) - from)) inside = !inside;
    }
  }
  return inside;
}

export function makeOutlineMask(outline: Outline): OutlineMask {
  const { minU, minV, maxU, maxV } = outlineBox(outline);
  const texel = new Uint8Array(maskSide * maskSide);
  if (!(maxU > minU && maxV > minV)) return { minU, minV, scaleU: 0, scaleV: 0, texel, ...edgesByRow([]) };
  const [scaleU, scaleV] = [maskSide / (maxU - minU), maskSide / (maxV - minV)];
  const points = outline.map(([u, v]) => [(u - minU) * scaleU, (v - minV) * scaleV] as const);
  let previous = points[points.length - 1];
  for (const point of points) {
    if (previous !== undefined) markEdge(texel, previous, point);
    previous = point;
  }
  fillInside(texel, points);
  return { minU, minV, scaleU, scaleV, texel, ...edgesByRow(points) };
}
