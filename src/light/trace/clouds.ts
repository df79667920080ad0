/** Clouds seen along a beam: each covers an ellipse, and dims by the path inside it. */
import type { Cloud, Surface } from '../../geometry/surface.ts';
import { dot, type Vec3 } from '../../geometry/vec.ts';
import type { Crossing } from '../tracer.ts';
import {
  type BeamFrame,
  firstColumn,
  firstRow,
  lastColumn,
  lastRow,
  type ReceiverGrid,
} from './receiverGrid.ts';

export function prepareClouds(
  surfaces: readonly Surface[],
): (frame: BeamFrame, grid: ReceiverGrid, crossing: Crossing) => void {
  const clouds: { cloud: Cloud; surface: number }[] = [];
  surfaces.forEach((cloud, surface) => {
    if (cloud.shape === 'cloud') clouds.push({ cloud, surface });
  });
  return (frame, grid, crossing) => {
    for (const { cloud, surface } of clouds) cover(cloud, surface, frame, grid, crossing);
  };
}

/**
 * Tests the receivers in the cells round the ellipsoid. Scaled to a unit ball it turns the frame's axes into R, T and A;
 * the point r R + t T + a A lies on the ball where |r R + t T + a A| = 1, which is a quadratic in a.
 */
function cover(
  cloud: Cloud,
  surface: number,
  frame: BeamFrame,
  grid: ReceiverGrid,
  crossing: Crossing,
): void {
  const { centre, halfSizeM, extinctionPerM } = cloud;
  const scaled = (v: Vec3): Vec3 => [v[0] / halfSizeM[0], v[1] / halfSizeM[1], v[2] / halfSizeM[2]];
  const halfExtent = (v: Vec3): number =>
    Math.hypot(v[0] * halfSizeM[0], v[1] * halfSizeM[1], v[2] * halfSizeM[2]);
  const [r0, t0, a0] = [dot(centre, frame.right), dot(centre, frame.top), dot(centre, frame.ahead)];
  const [halfR, halfT] = [halfExtent(frame.right), halfExtent(frame.top)];
  const [left, right] = [firstColumn(grid, r0 - halfR), lastColumn(grid, r0 + halfR)];
  const [low, high] = [firstRow(grid, t0 - halfT), lastRow(grid, t0 + halfT)];
  if (right < left) return;
  const [R, T, A] = [scaled(frame.right), scaled(frame.top), scaled(frame.ahead)];
  const [rr, tt, aa, rt, ra, ta] = [dot(R, R), dot(T, T), dot(A, A), dot(R, T), dot(R, A), dot(T, A)];
  for (let row = low; row <= high; row++) {
    const end = grid.start[row * grid.columns + right + 1] as number;
    for (let k = grid.start[row * grid.columns + left] as number; k < end; k++) {
      if (grid.onSurface[k] === surface) continue;
      const r = (grid.right[k] as number) - r0;
      const t = (grid.top[k] as number) - t0;
      const middle = -(r * ra + t * ta) / aa;
      const halfSquared = middle * middle - (r * r * rr + 2 * r * t * rt + t * t * tt - 1) / aa;
      if (!(halfSquared > 0)) continue;
      const half = Math.sqrt(halfSquared);
      const receiverAt = (grid.ahead[k] as number) - a0;
      const pathM = Math.max(0, middle + half - receiverAt) - Math.max(0, middle - half - receiverAt);
      if (pathM > 0) crossing(grid.receiver[k] as number, surface, Math.exp(-extinctionPerM * pathM));
    }
  }
}
