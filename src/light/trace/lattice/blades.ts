/** Blades on a lattice of rays: one affine map each, from rays to the texels of the outline's mask. */
import { maskBorder, maskOutside, maskSide } from '../outlineMask.ts';
import type { Hits } from './hits.ts';
import type { Lattice } from './lattice.ts';
import { type MaskArrays, maskTexels } from './masks.ts';
import { along, Cover, type Plane, planeOf } from './plane.ts';
import { bladeStride, type LatticeScene } from './scene.ts';
import type { Sweep } from './sweep.ts';

/** `isInsideBorder` over the table of all masks. */
function isInside({ rowStart, edge }: MaskArrays, mask: number, i: number, j: number): boolean {
  const row = mask * maskSide + (j | 0);
  const end = 4 * (rowStart[row + 1] as number);
  let inside = false;
  for (let at = 4 * (rowStart[row] as number); at < end; at += 4) {
    const low = edge[at + 1] as number;
    const high = edge[at + 3] as number;
    if (high > j !== low > j) {
      const from = edge[at] as number;
      if (i < from + ((j - low) / (high - low)) * ((edge[at + 2] as number) - from)) inside = !inside;
    }
  }
  return inside;
}

/**
 * A blade on the plane. With its mask's corner at (x0, y0) and its sides (xi, yi) and (xj, yj), ray (x, y) has mask
 * coordinates i = (x - x0) iX + (y - y0) iY and the same for j, and lies ahead by a0 + i ai + j aj.
 */
class SeenBlade extends Cover {
  x0 = 0;
  y0 = 0;
  iX = 0;
  iY = 0;
  jX = 0;
  jY = 0;
  a0 = 0;
  ai = 0;
  aj = 0;

  /** False when no ray can meet it. */
  look(blade: Float64Array, at: number, plane: Plane, lattice: Lattice): boolean {
    const { x, y, ahead } = plane;
    const x0 = along(blade, at, x) - plane.x0;
    const xi = along(blade, at + 3, x);
    const xj = along(blade, at + 6, x);
    const [left, right] = [x0 + Math.min(0, xi) + Math.min(0, xj), x0 + Math.max(0, xi) + Math.max(0, xj)];
    if (!this.setColumns(left, right, lattice)) return false;
    const y0 = along(blade, at, y) - plane.y0;
    const yi = along(blade, at + 3, y);
    const yj = along(blade, at + 6, y);
    const [low, high] = [y0 + Math.min(0, yi) + Math.min(0, yj), y0 + Math.max(0, yi) + Math.max(0, yj)];
    if (!this.setRows(low, high, lattice)) return false;
    const seen = xi * yj - yi * xj;
    if (Math.abs(seen) <= (blade[at + 9] as number) * plane.perM * plane.perM) return false;
    const unit = maskSide / seen;
    this.x0 = x0;
    this.y0 = y0;
    this.iX = yj * unit;
    this.iY = -xj * unit;
    this.jX = -yi * unit;
    this.jY = xi * unit;
    this.a0 = along(blade, at, ahead);
    this.ai = along(blade, at + 3, ahead) / maskSide;
    this.aj = along(blade, at + 6, ahead) / maskSide;
    return true;
  }
}

function fill(
  seen: SeenBlade,
  thing: number,
  mask: number,
  masks: MaskArrays,
  { lattice, followed }: Sweep,
  hits: Hits,
): void {
  const { x0, y0, iX, iY, jX, jY, a0, ai, aj, low, high } = seen;
  const { isSparse } = followed;
  hits.reserve(seen.rays);
  const { texel } = masks;
  const maskAt = mask * maskTexels;
  for (let y = low; y <= high; y++) {
    const row = y - lattice.low;
    const [left, right] = [
      Math.max(seen.left, followed.left[row] as number),
      Math.min(seen.right, followed.right[row] as number),
    ];
    const ray = row * lattice.columns - lattice.left;
    const iRow = (y - y0) * iY;
    const jRow = (y - y0) * jY;
    for (let x = left; x <= right; x++) {
      const number = isSparse ? (followed.ray[ray + x] as number) - 1 : ray + x;
      if (number < 0) continue;
      const i = (x - x0) * iX + iRow;
      const j = (x - x0) * jX + jRow;
      if (!(i >= 0 && j >= 0 && i < maskSide && j < maskSide)) continue;
      const state = texel[maskAt + (j | 0) * maskSide + (i | 0)];
      if (state === maskOutside || (state === maskBorder && !isInside(masks, mask, i, j))) continue;
      hits.add(number, a0 + i * ai + j * aj, thing);
    }
  }
}

/** Finds the hits of a sweep on blades. */
export function makeBladeCaster({
  bladeCount,
  blade,
  bladeMask,
  masks,
}: LatticeScene): (sweep: Sweep, hits: Hits) => void {
  const [arrays, seen] = [masks.arrays(), new SeenBlade()];
  return (sweep, hits) => {
    const plane = planeOf(sweep.lattice);
    for (let b = 0; b < bladeCount; b++) {
      if (seen.look(blade, b * bladeStride, plane, sweep.lattice)) {
        fill(seen, b, bladeMask[b] as number, arrays, sweep, hits);
      }
    }
  };
}
