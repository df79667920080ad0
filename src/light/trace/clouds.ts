/** Clouds seen along a beam: each covers what lies in its shadow, and dims by the path inside it. */
import type { Cloud, Surface } from '../../geometry/surface.ts';
import type { Crossing } from '../tracer.ts';
import { CloudSpan } from './cloudSpan.ts';
import {
  type BeamFrame,
  type Cover,
  firstColumn,
  firstRow,
  lastColumn,
  lastRow,
  type ReceiverGrid,
} from './receiverGrid.ts';

export function prepareClouds(surfaces: readonly Surface[]): Cover {
  const clouds: { cloud: Cloud; surface: number }[] = [];
  surfaces.forEach((cloud, surface) => {
    if (cloud.shape === 'cloud') clouds.push({ cloud, surface });
  });
  return (frame, grid, reached, crossing) => {
    for (const { cloud, surface } of clouds) {
      if (reached?.[surface] !== 0) cover(cloud, surface, frame, grid, crossing);
    }
  };
}

/** Tests the receivers in the cells round the cloud's shadow. */
function cover(
  cloud: Cloud,
  surface: number,
  frame: BeamFrame,
  grid: ReceiverGrid,
  crossing: Crossing,
): void {
  const span = new CloudSpan(cloud, frame);
  const { right0, top0, ahead0, halfRight, halfTop } = span;
  const [left, right] = [firstColumn(grid, right0 - halfRight), lastColumn(grid, right0 + halfRight)];
  const [low, high] = [firstRow(grid, top0 - halfTop), lastRow(grid, top0 + halfTop)];
  if (right < left) return;
  for (let row = low; row <= high; row++) {
    const end = grid.start[row * grid.columns + right + 1] as number;
    for (let k = grid.start[row * grid.columns + left] as number; k < end; k++) {
      if (grid.onSurface[k] === surface) continue;
      if (!span.look((grid.right[k] as number) - right0, (grid.top[k] as number) - top0)) continue;
      const pathM = span.pathM((grid.ahead[k] as number) - ahead0);
      if (pathM > 0) crossing(grid.receiver[k] as number, surface, Math.exp(-cloud.extinctionPerM * pathM));
    }
  }
}
