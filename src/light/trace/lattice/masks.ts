/** The masks of all outlines of a scene, one behind the other. */
import { type Outline, outlineArea } from '../../../geometry/outline.ts';
import { makeOutlineMask, maskSide, type OutlineMask } from '../outlineMask.ts';

export const maskTexels = maskSide * maskSide;

export interface MaskArrays {
  /** Texel (i, j) of mask m is texel[m * 4096 + j * 64 + i]. */
  readonly texel: Uint8Array;
  /** Edges that reach into row j of mask m: rowStart[m * 64 + j] to rowStart[m * 64 + j + 1] (excluded). */
  readonly rowStart: Int32Array;
  /** Four numbers an edge: i and j of its start and of its end, mask units. */
  readonly edge: Float64Array;
}

export type MaskBox = readonly [minU: number, minV: number, widthU: number, widthV: number];

export interface MaskTable {
  /** Number of the outline's mask, made when first asked for; one outline array has one mask. -1 without area. */
  readonly maskOf: (outline: Outline) => number;
  /** Least u and v of the outline, and its widths in u and v. */
  readonly boxOf: (mask: number) => MaskBox;
  /** Area in units of u and v. */
  readonly areaOf: (mask: number) => number;
  readonly arrays: () => MaskArrays;
}

export function makeMaskTable(): MaskTable {
  const numbers = new Map<Outline, number>();
  const made: { mask: OutlineMask; area: number }[] = [];
  const get = (mask: number): { mask: OutlineMask; area: number } => {
    const found = made[mask];
    if (found === undefined) throw new Error(`makeMaskTable: no such mask, got ${mask}`);
    return found;
  };
  return {
    maskOf: (outline) => {
      const known = numbers.get(outline);
      if (known !== undefined) return known;
      const mask = makeOutlineMask(outline);
      const number = mask.scaleU > 0 ? made.length : -1;
      numbers.set(outline, number);
      if (number >= 0) made.push({ mask, area: outlineArea(outline) });
      return number;
    },
    boxOf: (number) => {
      const { minU, minV, scaleU, scaleV } = get(number).mask;
      return [minU, minV, maskSide / scaleU, maskSide / scaleV];
    },
    areaOf: (mask) => get(mask).area,
    arrays: () => joined(made.map(({ mask }) => mask)),
  };
}

function joined(masks: readonly OutlineMask[]): MaskArrays {
  const texel = new Uint8Array(masks.length * maskTexels);
  const rowStart = new Int32Array(masks.length * maskSide + 1);
  const edge = new Float64Array(masks.reduce((sum, mask) => sum + mask.edge.length, 0));
  let edges = 0;
  masks.forEach((mask, m) => {
    texel.set(mask.texel, m * maskTexels);
    edge.set(mask.edge, 4 * edges);
    for (let j = 0; j <= maskSide; j++) rowStart[m * maskSide + j] = edges + (mask.rowStart[j] as number);
    edges += mask.edge.length / 4;
  });
  return { texel, rowStart, edge };
}
