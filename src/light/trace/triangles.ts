/** Triangles of meshes seen along a beam. */
import type { Mesh, Surface } from '../../geometry/surface.ts';
import { cross, dot, sub, type Vec3 } from '../../geometry/vec.ts';
import { type Crossing, edgeOnSine } from '../tracer.ts';
import {
  type BeamFrame,
  type Cover,
  firstColumn,
  firstRow,
  lastColumn,
  lastRow,
  type ReceiverGrid,
} from './receiverGrid.ts';

/** What of a triangle does not depend on the direction. */
interface PreparedTriangle {
  readonly surface: number;
  readonly passedShare: number;
  readonly a: Vec3;
  readonly b: Vec3;
  readonly c: Vec3;
  readonly normal: Vec3;
  readonly normalSize: number;
}

function prepare(mesh: Mesh, surface: number, at: number): PreparedTriangle {
  const corner = (k: number): Vec3 => [
    mesh.triangles[at + k] as number,
    mesh.triangles[at + k + 1] as number,
    mesh.triangles[at + k + 2] as number,
  ];
  const [a, b, c] = [corner(0), corner(3), corner(6)];
  const normal = cross(sub(b, a), sub(c, a));
  const passedShare = mesh.optics.transmittance;
  return { surface, passedShare, a, b, c, normal, normalSize: Math.hypot(...normal) };
}

export function prepareTriangles(surfaces: readonly Surface[]): Cover {
  const triangles: PreparedTriangle[] = [];
  surfaces.forEach((surface, index) => {
    if (surface.shape !== 'mesh') return;
    for (let at = 0; at < surface.triangles.length; at += 9) triangles.push(prepare(surface, index, at));
  });
  return (frame, grid, reached, crossing) => {
    for (const triangle of triangles) {
      if (reached?.[triangle.surface] !== 0) cover(triangle, frame, grid, crossing);
    }
  };
}

/**
 * Tests the receivers in the cells round the triangle, by the signs of the areas that a receiver's place spans with each
 * edge. Corners are taken relative to the receiver first, so that two triangles with a common edge get areas that are
 * exact opposites and no ray slips between them; Woop, Benthin and Wald 2013, JCGT 2(1):65.
 */
function cover(triangle: PreparedTriangle, frame: BeamFrame, grid: ReceiverGrid, crossing: Crossing): void {
  const { a, b, c, surface, passedShare } = triangle;
  if (Math.abs(dot(triangle.normal, frame.ahead)) <= edgeOnSine * triangle.normalSize) return;
  const [ar, br, cr] = [dot(a, frame.right), dot(b, frame.right), dot(c, frame.right)];
  const [left, right] = [firstColumn(grid, Math.min(ar, br, cr)), lastColumn(grid, Math.max(ar, br, cr))];
  if (right < left) return;
  const [at, bt, ct] = [dot(a, frame.top), dot(b, frame.top), dot(c, frame.top)];
  const [low, high] = [firstRow(grid, Math.min(at, bt, ct)), lastRow(grid, Math.max(at, bt, ct))];
  const [aa, ba, ca] = [dot(a, frame.ahead), dot(b, frame.ahead), dot(c, frame.ahead)];
  for (let row = low; row <= high; row++) {
    const end = grid.start[row * grid.columns + right + 1] as number;
    for (let k = grid.start[row * grid.columns + left] as number; k < end; k++) {
      const r = grid.right[k] as number;
      const t = grid.top[k] as number;
      const acrossA = (br - r) * (ct - t) - (bt - t) * (cr - r);
      const acrossB = (cr - r) * (at - t) - (ct - t) * (ar - r);
      const acrossC = (ar - r) * (bt - t) - (at - t) * (br - r);
      if ((acrossA < 0 || acrossB < 0 || acrossC < 0) && (acrossA > 0 || acrossB > 0 || acrossC > 0))
        continue;
      const whole = acrossA + acrossB + acrossC;
      if (whole === 0 || grid.onSurface[k] === surface) continue;
      const ahead = (acrossA * aa + acrossB * ba + acrossC * ca) / whole;
      if (ahead > (grid.ahead[k] as number)) crossing(grid.receiver[k] as number, surface, passedShare);
    }
  }
}
