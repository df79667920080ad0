/** Clouds on a lattice of rays: how much of the light they let through to each hit. */
import type { Cloud } from '../../../geometry/surface.ts';
import { CloudSpan } from '../cloudSpan.ts';
import type { SortedHits } from './hits.ts';
import type { Lattice } from './lattice.ts';

/** Multiplies `share` (entry per sorted hit) by exp(-extinction x path from the hit towards the light). */
export function dimByCloud(cloud: Cloud, lattice: Lattice, hits: SortedHits, share: Float64Array): void {
  const { frame, spacingM, columns, rows } = lattice;
  const [firstColumn, firstRow] = [lattice.left, lattice.low];
  const span = new CloudSpan(cloud, frame);
  const { halfRight, halfTop } = span;
  const r0 = span.right0 - lattice.right;
  const t0 = span.top0 - lattice.top;
  const left = Math.max(firstColumn, Math.ceil((r0 - halfRight) / spacingM));
  const end = Math.min(firstColumn + columns - 1, Math.floor((r0 + halfRight) / spacingM));
  const low = Math.max(firstRow, Math.ceil((t0 - halfTop) / spacingM));
  const high = Math.min(firstRow + rows - 1, Math.floor((t0 + halfTop) / spacingM));
  for (let y = low; y <= high; y++) {
    for (let x = left; x <= end; x++) {
      if (!span.look(x * spacingM - r0, y * spacingM - t0)) continue;
      const ray = (y - firstRow) * columns + x - firstColumn;
      const last = hits.start[ray + 1] as number;
      for (let k = hits.start[ray] as number; k < last; k++) {
        const pathM = span.pathM((hits.ahead[k] as number) - span.ahead0);
        share[k] = (share[k] as number) * Math.exp(-cloud.extinctionPerM * pathM);
      }
    }
  }
}
