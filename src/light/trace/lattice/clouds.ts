/** Clouds on a lattice of rays: how much of the light they let through to each hit. */
import type { Cloud } from '../../../geometry/surface.ts';
import { dot, type Vec3 } from '../../../geometry/vec.ts';
import type { SortedHits } from './hits.ts';
import type { Lattice } from './lattice.ts';

/**
 * Multiplies `share` (entry per sorted hit) by exp(-extinction x path from the hit towards the light). The ellipsoid is
 * scaled to a unit ball as in the point grid, which gives a quadratic in the distance ahead.
 */
export function dimByCloud(cloud: Cloud, lattice: Lattice, hits: SortedHits, share: Float64Array): void {
  const { centre, halfSizeM, extinctionPerM } = cloud;
  const { frame, spacingM, columns, rows } = lattice;
  const scaled = (v: Vec3): Vec3 => [v[0] / halfSizeM[0], v[1] / halfSizeM[1], v[2] / halfSizeM[2]];
  const halfExtent = (v: Vec3): number =>
    Math.hypot(v[0] * halfSizeM[0], v[1] * halfSizeM[1], v[2] * halfSizeM[2]);
  const r0 = dot(centre, frame.right) - lattice.right;
  const t0 = dot(centre, frame.top) - lattice.top;
  const a0 = dot(centre, frame.ahead);
  const [halfR, halfT] = [halfExtent(frame.right), halfExtent(frame.top)];
  const left = Math.max(0, Math.ceil((r0 - halfR) / spacingM));
  const end = Math.min(columns - 1, Math.floor((r0 + halfR) / spacingM));
  const low = Math.max(0, Math.ceil((t0 - halfT) / spacingM));
  const high = Math.min(rows - 1, Math.floor((t0 + halfT) / spacingM));
  const [R, T, A] = [scaled(frame.right), scaled(frame.top), scaled(frame.ahead)];
  const [rr, tt, aa, rt, ra, ta] = [dot(R, R), dot(T, T), dot(A, A), dot(R, T), dot(R, A), dot(T, A)];
  for (let y = low; y <= high; y++) {
    const t = y * spacingM - t0;
    for (let x = left; x <= end; x++) {
      const r = x * spacingM - r0;
      const middle = -(r * ra + t * ta) / aa;
      const halfSquared = middle * middle - (r * r * rr + 2 * r * t * rt + t * t * tt - 1) / aa;
      if (!(halfSquared > 0)) continue;
      const half = Math.sqrt(halfSquared);
      const ray = y * columns + x;
      const last = hits.start[ray + 1] as number;
      for (let k = hits.start[ray] as number; k < last; k++) {
        const from = (hits.ahead[k] as number) - a0;
        const pathM = Math.max(0, middle + half - from) - Math.max(0, middle - half - from);
        share[k] = (share[k] as number) * Math.exp(-extinctionPerM * pathM);
      }
    }
  }
}
