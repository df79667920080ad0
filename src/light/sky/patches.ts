/** The sky cut into patches between circles of equal elevation. */

export interface Patch {
  /** Its lower and upper elevation, degrees. */
  readonly lowDeg: number;
  readonly highDeg: number;
  /** Its bearings, clockwise from north, degrees; a cap runs from 0 to 360. */
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly solidAngleSr: number;
}

const sinDeg = (angleDeg: number): number => Math.sin((angleDeg * Math.PI) / 180);

/**
 * Patches row by row from the horizon, each row from north clockwise.
 * @param edgesDeg elevations of the circles between rows, rising, one more than rows
 * @param counts patches in each row
 */
export function patchRows(edgesDeg: readonly number[], counts: readonly number[]): readonly Patch[] {
  if (edgesDeg.length !== counts.length + 1) {
    throw new Error(
      `patchRows: one edge more than rows is needed, got ${edgesDeg.length} for ${counts.length}`,
    );
  }
  return counts.flatMap((count, row) => {
    const lowDeg = edgesDeg[row] as number;
    const highDeg = edgesDeg[row + 1] as number;
    const solidAngleSr = (2 * Math.PI * (sinDeg(highDeg) - sinDeg(lowDeg))) / count;
    return Array.from({ length: count }, (_, i) => ({
      lowDeg,
      highDeg,
      fromDeg: (360 * i) / count,
      toDeg: (360 * (i + 1)) / count,
      solidAngleSr,
    }));
  });
}

const tregenzaCounts = [30, 30, 24, 24, 18, 12, 6] as const;

/**
 * Reinhart & Walkenhorst 2001 (Energy and Buildings 33:683): each row of Tregenza's cut into `subdivision` rows of
 * `subdivision` times as many patches, the cap round the zenith kept as one: 144 n^2 + 1 patches. Rows are
 * 90 / (7 n + 1/2) degrees high, the cap half of that: 6.207 and not 6 degrees for n = 2.
 */
export function reinhartPatches(subdivision: number): readonly Patch[] {
  if (!(Number.isInteger(subdivision) && subdivision >= 1 && subdivision <= 32)) {
    throw new Error(`reinhartPatches: a whole number from 1 to 32 is needed, got ${subdivision}`);
  }
  const counts = tregenzaCounts.flatMap((count) => Array<number>(subdivision).fill(count * subdivision));
  const stepDeg = 90 / (counts.length + 0.5);
  const edges = [...counts, 0].map((_, row) => row * stepDeg);
  return patchRows([...edges, 90], [...counts, 1]);
}

/** Tregenza 1987 (Lighting Research and Technology 19:13): 145 patches of 0.034 to 0.047 sr in rows of 12 degrees. */
export const tregenzaPatches = reinhartPatches(1);
