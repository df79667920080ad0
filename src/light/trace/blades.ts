/** Blades seen along a beam: each is one affine map from the plane across the beam to its outline's mask. */
import type { Outline } from '../../geometry/outline.ts';
import type { Blade, Surface } from '../../geometry/surface.ts';
import { cross, type Vec3 } from '../../geometry/vec.ts';
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
  type Cover,
  firstColumn,
  firstRow,
  lastColumn,
  lastRow,
  type ReceiverGrid,
} from './receiverGrid.ts';

/** Corner of the mask in the world, its two sides, their cross product (x, y, z each), and its least seen size. */
export const bladeStride = 13;

/** What of the blades does not depend on the direction; entry b of each list is blade b, numbers from bladeStride x b on. */
export interface PreparedBlades {
  readonly numbers: Float64Array;
  readonly surfaces: readonly number[];
  readonly masks: readonly OutlineMask[];
  readonly passedShares: readonly number[];
}

function numbersOf({ origin, along, across }: Blade, mask: OutlineMask): readonly number[] {
  const at = (k: 0 | 1 | 2): number => origin[k] + along[k] * mask.minU + across[k] * mask.minV;
  const [widthU, widthV] = [maskSide / mask.scaleU, maskSide / mask.scaleV];
  const sideI: Vec3 = [along[0] * widthU, along[1] * widthU, along[2] * widthU];
  const sideJ: Vec3 = [across[0] * widthV, across[1] * widthV, across[2] * widthV];
  const normal = cross(sideI, sideJ);
  return [at(0), at(1), at(2), ...sideI, ...sideJ, ...normal, edgeOnSine * Math.hypot(...normal)];
}

/** Blades with one and the same outline array share one mask. */
export function preparedBlades(all: readonly Surface[]): PreparedBlades {
  const made = new Map<Outline, OutlineMask>();
  const [numbers, surfaces]: [number[], number[]] = [[], []];
  const [masks, passedShares]: [OutlineMask[], number[]] = [[], []];
  all.forEach((surface, index) => {
    if (surface.shape !== 'blade') return;
    const mask = made.get(surface.outline) ?? makeOutlineMask(surface.outline);
    made.set(surface.outline, mask);
    if (!(mask.scaleU > 0)) return;
    numbers.push(...numbersOf(surface, mask));
    surfaces.push(index);
    masks.push(mask);
    passedShares.push(surface.optics.transmittance);
  });
  return { numbers: Float64Array.from(numbers), surfaces, masks, passedShares };
}

export function prepareBlades(surfaces: readonly Surface[]): Cover {
  const blades = preparedBlades(surfaces);
  const seen = new SeenBlade();
  return (frame, grid, reached, crossing) => {
    for (let b = 0; b < blades.surfaces.length; b++) {
      if (reached?.[blades.surfaces[b] as number] === 0) continue;
      if (seen.look(blades.numbers, bladeStride * b, frame, grid)) cover(seen, blades, b, grid, crossing);
    }
  };
}

const along = (values: Float64Array, at: number, axis: Vec3): number =>
  (values[at] as number) * axis[0] +
  (values[at + 1] as number) * axis[1] +
  (values[at + 2] as number) * axis[2];

/**
 * A blade on the plane and the cells it may cover. With the mask's corner at (r0, t0) and its sides (ri, ti) and (rj, tj), a
 * place (r, t) has mask coordinates that solve r - r0 = i ri + j rj, t - t0 = i ti + j tj.
 */
class SeenBlade {
  r0 = 0;
  t0 = 0;
  a0 = 0;
  iRight = 0;
  iTop = 0;
  jRight = 0;
  jTop = 0;
  aheadI = 0;
  aheadJ = 0;
  left = 0;
  right = 0;
  low = 0;
  high = 0;

  /** False when it covers no cell. */
  look(blade: Float64Array, at: number, { right, top, ahead }: BeamFrame, grid: ReceiverGrid): boolean {
    if (Math.abs(along(blade, at + 9, ahead)) <= (blade[at + 12] as number)) return false;
    const r0 = along(blade, at, right);
    const ri = along(blade, at + 3, right);
    const rj = along(blade, at + 6, right);
    this.left = firstColumn(grid, r0 + Math.min(0, ri) + Math.min(0, rj));
    this.right = lastColumn(grid, r0 + Math.max(0, ri) + Math.max(0, rj));
    if (this.right < this.left) return false;
    const t0 = along(blade, at, top);
    const ti = along(blade, at + 3, top);
    const tj = along(blade, at + 6, top);
    this.low = firstRow(grid, t0 + Math.min(0, ti) + Math.min(0, tj));
    this.high = lastRow(grid, t0 + Math.max(0, ti) + Math.max(0, tj));
    if (this.high < this.low) return false;
    const unit = maskSide / (ri * tj - rj * ti);
    this.r0 = r0;
    this.t0 = t0;
    this.a0 = along(blade, at, ahead);
    this.iRight = tj * unit;
    this.iTop = -rj * unit;
    this.jRight = -ti * unit;
    this.jTop = ri * unit;
    this.aheadI = along(blade, at + 3, ahead) / maskSide;
    this.aheadJ = along(blade, at + 6, ahead) / maskSide;
    return true;
  }
}

/** Tests the receivers in the cells round the blade. */
function cover(
  seen: SeenBlade,
  { surfaces, masks, passedShares }: PreparedBlades,
  b: number,
  grid: ReceiverGrid,
  crossing: Crossing,
): void {
  const { r0, t0, a0, iRight, iTop, jRight, jTop, aheadI, aheadJ, left, right } = seen;
  const { right: places, top: tops, ahead, onSurface, receiver, start, columns } = grid;
  const surface = surfaces[b] as number;
  const mask = masks[b] as OutlineMask;
  const passedShare = passedShares[b] as number;
  const { texel } = mask;
  for (let row = seen.low; row <= seen.high; row++) {
    const end = start[row * columns + right + 1] as number;
    for (let k = start[row * columns + left] as number; k < end; k++) {
      const r = (places[k] as number) - r0;
      const t = (tops[k] as number) - t0;
      const i = r * iRight + t * iTop;
      const j = r * jRight + t * jTop;
      if (!(i >= 0 && j >= 0 && i < maskSide && j < maskSide)) continue;
      const state = texel[(j | 0) * maskSide + (i | 0)];
      if (state === maskOutside || onSurface[k] === surface) continue;
      if (!(a0 + i * aheadI + j * aheadJ > (ahead[k] as number))) continue;
      if (state === maskBorder && !isInsideBorder(mask, i, j)) continue;
      crossing(receiver[k] as number, surface, passedShare);
    }
  }
}
