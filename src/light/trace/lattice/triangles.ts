/** Triangles on a lattice of rays. */
import type { Hits } from './hits.ts';
import type { Lattice } from './lattice.ts';
import { along, Cover } from './plane.ts';
import { type LatticeScene, triangleStride } from './scene.ts';
import type { Sweep } from './sweep.ts';

/** Places of the corners a, b and c on the plane and along the direction, metres from ray (0, 0). */
class SeenTriangle extends Cover {
  readonly r = new Float64Array(3);
  readonly t = new Float64Array(3);
  readonly ahead = new Float64Array(3);

  /** False when no ray can meet it. */
  look(triangle: Float64Array, at: number, lattice: Lattice): boolean {
    const { frame, spacingM } = lattice;
    const { r, t, ahead } = this;
    for (let k = 0; k < 3; k++) {
      r[k] = along(triangle, at + 3 * k, frame.right) - lattice.right;
      t[k] = along(triangle, at + 3 * k, frame.top) - lattice.top;
      ahead[k] = along(triangle, at + 3 * k, frame.ahead);
    }
    const [ar, br, cr, aTop, bTop, cTop] = [...r, ...t] as [number, number, number, number, number, number];
    const perM = 1 / spacingM;
    if (!this.setColumns(Math.min(ar, br, cr) * perM, Math.max(ar, br, cr) * perM, lattice)) return false;
    if (!this.setRows(Math.min(aTop, bTop, cTop) * perM, Math.max(aTop, bTop, cTop) * perM, lattice))
      return false;
    const seen = (br - ar) * (cTop - aTop) - (bTop - aTop) * (cr - ar);
    return Math.abs(seen) > (triangle[at + 9] as number);
  }
}

/**
 * By the signs of the areas that a ray spans with each edge, corners relative to the ray first, so that no ray slips between
 * two triangles with a common edge; Woop, Benthin and Wald 2013, JCGT 2(1):65.
 */
function fill(seen: SeenTriangle, thing: number, { lattice, followed }: Sweep, hits: Hits): void {
  const { low, high } = seen;
  const { spacingM, columns } = lattice;
  const [ar, br, cr] = seen.r as unknown as [number, number, number];
  const [aTop, bTop, cTop] = seen.t as unknown as [number, number, number];
  const [aAhead, bAhead, cAhead] = seen.ahead as unknown as [number, number, number];
  const { isSparse } = followed;
  hits.reserve(seen.rays);
  for (let y = low; y <= high; y++) {
    const row = y - lattice.low;
    const left = Math.max(seen.left, followed.left[row] as number);
    const right = Math.min(seen.right, followed.right[row] as number);
    const ray = row * columns - lattice.left;
    const t = y * spacingM;
    for (let x = left; x <= right; x++) {
      const number = isSparse ? (followed.ray[ray + x] as number) - 1 : ray + x;
      if (number < 0) continue;
      const r = x * spacingM;
      const a = (br - r) * (cTop - t) - (bTop - t) * (cr - r);
      const b = (cr - r) * (aTop - t) - (cTop - t) * (ar - r);
      const c = (ar - r) * (bTop - t) - (aTop - t) * (br - r);
      if ((a < 0 || b < 0 || c < 0) && (a > 0 || b > 0 || c > 0)) continue;
      const whole = a + b + c;
      if (whole !== 0) hits.add(number, (a * aAhead + b * bAhead + c * cAhead) / whole, thing);
    }
  }
}

/** Finds the hits of a sweep on triangles. */
export function makeTriangleCaster({
  bladeCount,
  stemCount,
  triangleCount,
  triangle,
}: LatticeScene): (sweep: Sweep, hits: Hits) => void {
  const [seen, first] = [new SeenTriangle(), bladeCount + stemCount];
  return (sweep, hits) => {
    for (let n = 0; n < triangleCount; n++) {
      if (seen.look(triangle, n * triangleStride, sweep.lattice)) fill(seen, first + n, sweep, hits);
    }
  };
}
