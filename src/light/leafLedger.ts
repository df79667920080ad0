/**
 * The ledger of leaf light: which owners stand between the light and each ray on a leaf. Like the ledger of sensors it
 * answers for any period, any weather and any set of kept owners by arithmetic alone.
 */
import type { Direction } from './directions.ts';

/**
 * One wave: for every direction a square lattice of parallel rays, placed at random. Along a ray its hits are listed from
 * the light down to the last leaf; each leaf hit is a sample of the light on its group, and what shades it is the hits of
 * the ray before it. So k hits hold the blockers of up to k samples.
 */
export interface LeafWave {
  readonly directions: readonly Direction[];
  /** Leaves whose light is taken together: a shoot's, say. */
  readonly groupCount: number;
  /** One-sided area of the leaves of each group, m2. */
  readonly groupAreaM2: Float64Array;
  /** Seed and number of the wave, which placed the lattices, and the distance between neighbouring rays. */
  readonly seed: number;
  readonly wave: number;
  readonly spacingM: number;
  /** What one ray stands for on the plane across its direction, m2: the lattice's spacing squared. */
  readonly rayAreaM2: number;
  /** Hits of direction d are entries hitStart[d] to hitStart[d + 1] (excluded). */
  readonly hitStart: Float64Array;
  /** Kind of the thing hit; where a new ray begins, ~kind (-1 - kind), which is below 0. */
  readonly hitKind: Int32Array;
  /**
   * Rays with hits; those of direction d are entries runStart[d] to runStart[d + 1] (excluded), and each holds where its ray
   * is: row x columns + column in the direction's window. 4 bytes each.
   */
  readonly runRay: Int32Array;
  readonly runStart: Float64Array;
  /**
   * What of each direction's lattice was followed, four numbers each: first column and row, counted from the lattice's ray (0, 0),
   * and how many columns and rows.
   */
  readonly window: Int32Array;
  /** Share of light that clouds let through to the hit; null where there are none. */
  readonly hitShare: Float32Array | null;
  /** Per kind: group whose light it gathers, -1 for wood and the like; owner; share of light it lets through. */
  readonly kindGroup: Int32Array;
  readonly kindOwner: Int32Array;
  readonly kindShare: Float64Array;
  /** Where rays to the ground come down; where left out all of the ground is taken as lit alike. */
  readonly landing?: Landing;
}

/** The directions of a wave as they are weighed: those to the ground once for every zone of it that has a light of its own. */
export interface Landing {
  readonly directions: readonly Direction[];
  /** Per entry of these: number of the direction as it was traced, and the zone its rays come down in; 0 for all that has none. */
  readonly traced: Int32Array;
  readonly zone: Uint8Array;
  /** Highest number of a zone. */
  readonly zones: number;
  /** Zone of each ray with hits, as `runRay`. */
  readonly runZone: Uint8Array;
}

/** The directions that the rows of a wave stand for. */
export const weighedDirections = ({ directions, landing }: LeafWave): readonly Direction[] =>
  landing?.directions ?? directions;

/** Of a row of a wave: its direction as traced, and its zone. */
export const rowPlace = ({ landing }: LeafWave, row: number): readonly [direction: number, zone: number] =>
  landing === undefined ? [row, 0] : [landing.traced[row] as number, landing.zone[row] as number];

/** Turns `rowPlace` round: the row of a direction and a zone, -1 where there is none. */
export function rowNumbers(wave: LeafWave): (direction: number, zone: number) => number {
  const { landing, directions } = wave;
  if (landing === undefined) return (direction) => direction;
  const zones = landing.zones + 1;
  const rows = new Int32Array(directions.length * zones).fill(-1);
  landing.traced.forEach((direction, row) => {
    rows[direction * zones + (landing.zone[row] as number)] = row;
  });
  return (direction, zone) => rows[direction * zones + zone] as number;
}

export interface LeafLedger {
  readonly ownerCount: number;
  readonly groupCount: number;
  readonly waves: readonly LeafWave[];
  readonly seed: number;
}

/**
 * The same ledger with its groups put together into larger ones: its hits are shared, not copied.
 * @param groupOf larger group of each group, 0 to count - 1
 */
export function regrouped(ledger: LeafLedger, groupOf: Int32Array, count: number): LeafLedger {
  if (groupOf.length !== ledger.groupCount) {
    throw new Error(
      `regrouped: an entry for each of ${ledger.groupCount} groups is needed, got ${groupOf.length}`,
    );
  }
  const waves = ledger.waves.map((wave): LeafWave => {
    const groupAreaM2 = new Float64Array(count);
    wave.groupAreaM2.forEach((areaM2, group) => {
      const larger = groupOf[group] as number;
      groupAreaM2[larger] = (groupAreaM2[larger] as number) + areaM2;
    });
    const kindGroup = wave.kindGroup.map((group) => (group < 0 ? -1 : (groupOf[group] as number)));
    return { ...wave, groupCount: count, groupAreaM2, kindGroup };
  });
  return { ...ledger, groupCount: count, waves };
}
