/** The light on leaves, taken apart by the way it came. */
import type { CellLight } from './directions.ts';
import { type LeafLedger, type LeafWave, rowPlace, weighedDirections } from './leafLedger.ts';
import type { LeafFigures } from './leafOptics.ts';
import { checkLeaves, kindShares, ZoneRows } from './leafTable.ts';
import type { KeepSet } from './ledger.ts';
import {
  type LightParts,
  type MeasuredParts,
  type PartsTable,
  partsOfRows,
  type RowsOf,
  tableOfRows,
  unbentShareOf,
} from './lightParts.ts';

/** Shares of the light that each kind of thing lets through. */
interface PassedShares {
  /** 1 for all that no cut removes. */
  readonly leaves: Float64Array;
  readonly unbent: Float64Array;
  /** 1 for all else. */
  readonly fixed: Float64Array;
}

function passedShares(wave: LeafWave, figures: LeafFigures, keep?: KeepSet): PassedShares {
  const all = kindShares(wave, keep);
  const { kindOwner } = wave;
  const leaves = all.map((share, kind) => (kindOwner[kind] === 0 ? 1 : share));
  const fixed = all.map((share, kind) => (kindOwner[kind] === 0 ? share : 1));
  return { leaves, unbent: leaves.map(unbentShareOf(figures)), fixed };
}

/** Per zone and group. */
interface Rows {
  readonly straight: Float64Array;
  readonly transmitted: Float64Array;
  readonly scattered: Float64Array;
}

function sumParts(wave: LeafWave, shares: PassedShares, direction: number, into: Rows): void {
  const { hitKind, hitShare, hitStart, kindGroup, runStart, landing, groupCount } = wave;
  const { straight, transmitted, scattered } = into;
  let [leaves, unbent, fixed] = [1, 1, 1];
  let [run, row] = [runStart[direction] as number, 0];
  for (let k = hitStart[direction] as number; k < (hitStart[direction + 1] as number); k++) {
    let kind = hitKind[k] as number;
    if (kind < 0) {
      kind = ~kind;
      leaves = 1;
      unbent = 1;
      fixed = 1;
      if (landing !== undefined) row = (landing.runZone[run++] as number) * groupCount;
    }
    const group = kindGroup[kind] as number;
    if (group >= 0) {
      const at = row + group;
      const reached = hitShare === null ? fixed : fixed * (hitShare[k] as number);
      if (leaves === 1) straight[at] = (straight[at] as number) + reached;
      else {
        const [light, through] = [reached * leaves, reached * leaves * unbent];
        transmitted[at] = (transmitted[at] as number) + through;
        scattered[at] = (scattered[at] as number) + (light - through);
      }
    }
    leaves *= shares.leaves[kind] as number;
    unbent *= shares.unbent[kind] as number;
    fixed *= shares.fixed[kind] as number;
  }
}

/** The three rows of a direction are made together. */
function partRowMaker(wave: LeafWave, figures: LeafFigures, keep?: KeepSet): RowsOf {
  const shares = passedShares(wave, figures, keep);
  const zoneRows = {
    straight: new ZoneRows(wave),
    transmitted: new ZoneRows(wave),
    scattered: new ZoneRows(wave),
  };
  const { straight, transmitted, scattered } = zoneRows;
  const rows = { straight: straight.rows, transmitted: transmitted.rows, scattered: scattered.rows };
  const of = (name: keyof Rows) => (row: number) => {
    const [direction, zone] = rowPlace(wave, row);
    if (straight.turnTo(wave, direction)) {
      transmitted.turnTo(wave, direction);
      scattered.turnTo(wave, direction);
      sumParts(wave, shares, direction, rows);
      for (const one of Object.values(zoneRows)) one.scale();
    }
    return zoneRows[name].of(zone);
  };
  return { straight: of('straight'), transmitted: of('transmitted'), scattered: of('scattered') };
}

const rowWaves = (ledger: LeafLedger, figures: LeafFigures, keep?: KeepSet) => {
  checkLeaves(ledger, keep);
  return ledger.waves.map((wave) => ({
    directions: weighedDirections(wave),
    rowsOf: partRowMaker(wave, figures, keep),
  }));
};

/** As `leafTable`, for a canopy whose leaves have the optics of `leafOptics(figures)`: ask it by `partsOf`. */
export const leafPartsTable = (ledger: LeafLedger, figures: LeafFigures, keep?: KeepSet): PartsTable =>
  tableOfRows(rowWaves(ledger, figures, keep), ledger.groupCount);

/** Parts of `leafExposure`, as `measuredParts` takes those of `exposure`. Who asks more than once makes a `leafPartsTable`. */
export const measuredLeafParts = (
  ledger: LeafLedger,
  light: CellLight,
  figures: LeafFigures,
  keep?: KeepSet,
): readonly MeasuredParts[] => partsOfRows(rowWaves(ledger, figures, keep), ledger.groupCount, light);

/** The parts alone. */
export function leafExposureParts(
  ledger: LeafLedger,
  light: CellLight,
  figures: LeafFigures,
  keep?: KeepSet,
): readonly LightParts[] {
  return measuredLeafParts(ledger, light, figures, keep).map(({ parts }) => parts);
}
