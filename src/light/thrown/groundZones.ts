/** The ground round a tree, cut into zones: the shade on it is known zone by zone. */
import type { Vec3 } from '../../geometry/vec.ts';
import type { Patch } from './patches.ts';

/** Rising edges of the zones on the level plane of height 0, metres, as many fields between them eastwards and southwards. */
export interface GroundZones {
  readonly eastM: readonly number[];
  readonly southM: readonly number[];
}

/** Our choice: quarters of what lies below the crown, and a ring as wide as the crown is high, for shade of a sun at 45 degrees. */
function edges(from: number, to: number, ringM: number): readonly number[] {
  const quarter = (to - from) / 4;
  return [from - ringM, from, from + quarter, from + 2 * quarter, to - quarter, to, to + ringM];
}

/**
 * Zones round a crown; null where nothing stands above the ground.
 * @param points of the crown
 * @param reachM how far leaves reach beyond them
 */
export function groundZones(points: readonly Vec3[], reachM: number): GroundZones | null {
  const range = (axis: 0 | 1 | 2): [number, number] => {
    let [low, high] = [Infinity, -Infinity];
    for (const point of points) {
      low = Math.min(low, point[axis]);
      high = Math.max(high, point[axis]);
    }
    return [low - reachM, high + reachM];
  };
  const highM = range(1)[1];
  if (!(highM > 0 && reachM > 0)) return null;
  const [[west, east], [north, south]] = [range(0), range(2)];
  return { eastM: edges(west, east, highM), southM: edges(north, south, highM) };
}

const fields = (along: readonly number[]): number => along.length - 1;

export const zoneCount = ({ eastM, southM }: GroundZones): number => fields(eastM) * fields(southM);

/** Field of a place along one axis; -1 outside. */
function fieldOf(place: number, along: readonly number[]): number {
  if (!(place >= (along[0] as number))) return -1;
  for (let k = 1; k < along.length; k++) if (place < (along[k] as number)) return k - 1;
  return -1;
}

/** Number of the zone of a place on the ground, row by row from the north; -1 beyond all of them. */
export function zoneAt({ eastM, southM }: GroundZones, x: number, z: number): number {
  const [column, row] = [fieldOf(x, eastM), fieldOf(z, southM)];
  return column < 0 || row < 0 ? -1 : row * fields(eastM) + column;
}

/** Each zone as a patch that is lit from above, in the order of their numbers. */
export function zonePatches({ eastM, southM }: GroundZones): readonly Patch[] {
  return southM.slice(0, -1).flatMap((z, row) =>
    eastM.slice(0, -1).map((x, column): Patch => {
      const [x2, z2] = [eastM[column + 1] as number, southM[row + 1] as number];
      return {
        surface: -1,
        reflectance: Number.NaN,
        corner: [x, 0, z2],
        along: [x2 - x, 0, 0],
        across: [0, 0, z - z2],
        normal: [0, 1, 0],
      };
    }),
  );
}
