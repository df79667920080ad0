/** Blades seen along a beam: each is one affine map from the plane across the beam to its outline's mask. */
import type { Outline } from '../../geometry/outline.ts';
import type { Blade, Surface } from '../../geometry/surface.ts';
import { cross, dot, type Vec3 } from '../../geometry/vec.ts';
import { type Crossing, edgeOnSine } from '../tracer.ts';
import {
  isInsideBorder,
  makeOutlineMask,
  maskBorder,
  maskOutside,
  maskSide,
  type OutlineMask,
} from './outlineMask.ts';
import {
  type BeamFrame,
  firstColumn,
  firstRow,
  lastColumn,
  lastRow,
  type ReceiverGrid,
} from './receiverGrid.ts';

/** What of a blade does not depend on the direction. */
interface PreparedBlade {
  readonly surface: number;
  readonly passedShare: number;
  readonly mask: OutlineMask;
  /** Corner of the mask in the world, its two sides, and their cross product. */
  readonly corner: Vec3;
  readonly sideI: Vec3;
  readonly sideJ: Vec3;
  readonly normal: Vec3;
  readonly normalSize: number;
}

function prepare(blade: Blade, surface: number, mask: OutlineMask): PreparedBlade {
  const { origin, along, across, optics } = blade;
  const at = (k: 0 | 1 | 2): number => origin[k] + along[k] * mask.minU + across[k] * mask.minV;
  const [widthU, widthV] = [maskSide / mask.scaleU, maskSide / mask.scaleV];
  const sideI: Vec3 = [along[0] * widthU, along[1] * widthU, along[2] * widthU];
  const sideJ: Vec3 = [across[0] * widthV, across[1] * widthV, across[2] * widthV];
  const normal = cross(sideI, sideJ);
  const corner: Vec3 = [at(0), at(1), at(2)];
  const normalSize = Math.hypot(...normal);
  return { surface, passedShare: optics.transmittance, mask, corner, sideI, sideJ, normal, normalSize };
}

/** Blades with one and the same outline array share one mask. */
export function prepareBlades(
  surfaces: readonly Surface[],
): (frame: BeamFrame, grid: ReceiverGrid, crossing: Crossing) => void {
  const masks = new Map<Outline, OutlineMask>();
  const blades: PreparedBlade[] = [];
  surfaces.forEach((surface, index) => {
    if (surface.shape !== 'blade') return;
    const mask = masks.get(surface.outline) ?? makeOutlineMask(surface.outline);
    masks.set(surface.outline, mask);
    if (mask.scaleU > 0) blades.push(prepare(surface, index, mask));
  });
  return (frame, grid, crossing) => {
    for (const blade of blades) cover(blade, frame, grid, crossing);
  };
}

/**
 * Tests the receivers in the cells round the blade. With the mask's corner at (r0, t0) and its sides (ri, ti) and
 * (rj, tj) on the plane, a place (r, t) has mask coordinates that solve r - r0 = i ri + j rj, t - t0 = i ti + j tj.
 */
function cover(blade: PreparedBlade, frame: BeamFrame, grid: ReceiverGrid, crossing: Crossing): void {
  const { corner, sideI, sideJ, mask, passedShare, surface } = blade;
  const facing = dot(blade.normal, frame.ahead);
  if (Math.abs(facing) <= edgeOnSine * blade.normalSize) return;
  const [r0, ri, rj] = [dot(corner, frame.right), dot(sideI, frame.right), dot(sideJ, frame.right)];
  const left = firstColumn(grid, r0 + Math.min(0, ri) + Math.min(0, rj));
  const right = lastColumn(grid, r0 + Math.max(0, ri) + Math.max(0, rj));
  if (right < left) return;
  const [t0, ti, tj] = [dot(corner, frame.top), dot(sideI, frame.top), dot(sideJ, frame.top)];
  const low = firstRow(grid, t0 + Math.min(0, ti) + Math.min(0, tj));
  const high = lastRow(grid, t0 + Math.max(0, ti) + Math.max(0, tj));
  const [a0, ai, aj] = [dot(corner, frame.ahead), dot(sideI, frame.ahead), dot(sideJ, frame.ahead)];
  const unit = maskSide / (ri * tj - rj * ti);
  const [iRight, iTop, jRight, jTop] = [tj * unit, -rj * unit, -ti * unit, ri * unit];
  const [aheadI, aheadJ] = [ai / maskSide, aj / maskSide];
  const { texel } = mask;
  for (let row = low; row <= high; row++) {
    const end = grid.start[row * grid.columns + right + 1] as number;
    for (let k = grid.start[row * grid.columns + left] as number; k < end; k++) {
      const r = (grid.right[k] as number) - r0;
      const t = (grid.top[k] as number) - t0;
      const i = r * iRight + t * iTop;
      const j = r * jRight + t * jTop;
      if (!(i >= 0 && j >= 0 && i < maskSide && j < maskSide)) continue;
      const state = texel[(j | 0) * maskSide + (i | 0)];
      if (state === maskOutside || grid.onSurface[k] === surface) continue;
      if (!(a0 + i * aheadI + j * aheadJ > (grid.ahead[k] as number))) continue;
      if (state === maskBorder && !isInsideBorder(mask, i, j)) continue;
      crossing(grid.receiver[k] as number, surface, passedShare);
    }
  }
}
