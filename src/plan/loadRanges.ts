/** Lines below N, the load by which a crop is thinned out, for the bound on keep-sets: see `bound.ts`. */
import { keptAtLoad } from './crop.ts';

interface Feeding {
  /** Figs that the roots can feed. */
  readonly held: number;
  /** Chance that a fig ripens at a load, by bearing node. */
  ripeAtLoad(load: number): Float64Array;
}

/** For all sets whose load lies between two: a line below N there. */
interface Line {
  readonly a: number;
  /** Per fig set. */
  readonly b: number;
}

export interface LoadRange {
  readonly lines: readonly Line[];
  /** Chance to ripen of a fig of each bearing node at the least load, and the greatest N. */
  readonly ripe: Float64Array;
  readonly mostN: number;
}

/** Ends of the ranges of load, beyond the last of which figs ripen no later; slopes tried beside tangents. Our choice. */
const ends = [0, 0.6, 0.85, 1, 1.06, 1.12, 1.2, 1.3, 1.45, 1.6, 1.8, 2];
const slopes = [-1, -0.6, -0.3, 0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9, 1, 1.2, 1.5, 2, 3];

const nOf = (load: number): number => 1 / keptAtLoad(load);

/** N is convex: below it lie its tangents, and within a range lines through its ends that are steeper, or flatter. */
function linesOn(from: number, to: number, held: number): Line[] {
  const tangent = (load: number): number => (load / nOf(load)) ** 3;
  const through = (load: number, slope: number): Line => ({ a: nOf(load) - slope * load, b: slope / held });
  const middle = (from + Math.min(to, 2 * from + 1)) / 2;
  return [
    through(from, tangent(from)),
    through(middle, tangent(middle)),
    ...slopes.filter((slope) => slope < tangent(from)).map((slope) => through(from, slope)),
    ...(Number.isFinite(to) ? slopes.filter((slope) => slope > tangent(to)) : []).map((slope) =>
      through(to, slope),
    ),
  ];
}

/** Ranges that cover all loads up to the greatest. */
export function rangesOf({ held, ripeAtLoad }: Feeding, mostLoad: number): LoadRange[] {
  if (!Number.isFinite(held)) return [{ lines: [{ a: 1, b: 0 }], ripe: ripeAtLoad(0), mostN: 1 }];
  return ends
    .filter((from) => from === 0 || from < mostLoad)
    .map((from, i) => {
      const to = ends[i + 1] ?? Number.POSITIVE_INFINITY;
      return {
        lines: linesOn(from, to, held),
        ripe: ripeAtLoad(from),
        mostN: nOf(Math.min(to, mostLoad)),
      };
    });
}
