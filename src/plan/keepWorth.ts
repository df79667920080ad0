/** What a keep-set is worth to the search: figs and wood, followed from one flip to the next. */
import type { KeepSet } from '../light/ledger.ts';
import { mergeRows, type RowSource } from '../light/mergeForSearch.ts';
import type { SearchTable } from '../light/searchTable.ts';
import type { FigValues } from '../species/fig.ts';
import type { KeepFigures } from './choice.ts';
import { ripened } from './crop.ts';
import { receiverOf, type TracedSeason } from './tracedSeason.ts';

/**
 * Rows of the table: first the sites of figs, each with its mean over the stages, then the nodes at full leaf. Only rows that
 * changed since the last count are read anew, and only of owners that stand.
 */
export class KeepWorth {
  private readonly table: SearchTable;
  private readonly traced: TracedSeason;
  private readonly values: FigValues;
  /** Owner of each row; of those of nodes that can be lit at all. */
  private readonly rowOwner: Int32Array;
  /** Per row: figs set at the site, or metres of wood in fruiting light. */
  private readonly worth: Float64Array;
  private readonly byBearing: Float64Array;
  /** Length of shoot that belongs to each row of a node, metres. */
  private readonly stretchM: Float64Array;
  /** Nodes at full leaf that have rows. */
  private readonly nodes: readonly number[];
  /** Per row: its owner where that is free, else 0. */
  private readonly rowGroup: Int32Array;
  /** Rows of owner o, of all that is not free for owner 0: ownRow[ownStart[o]] to ownRow[ownStart[o + 1]] (excluded). */
  private readonly ownStart: Int32Array;
  private readonly ownRow: Int32Array;
  /** Sums for what stands now, when they are known: figs set by bearing node are in `byBearing`. */
  private woodM = 0;
  private isSummed = false;
  private readonly byBearingIf: Float64Array;

  constructor(traced: TracedSeason, values: FigValues, free: Uint8Array, keep: KeepSet) {
    this.traced = traced;
    this.values = values;
    const nodes = traced.full.canopy.nodes.flatMap(({ owner }, i) => (keep[owner] === 1 ? [i] : []));
    this.nodes = nodes;
    this.table = mergeRows(rowSources(traced, nodes), { free, keep });
    const { owner, bearing } = traced.sites;
    this.rowOwner = Int32Array.from([
      ...owner,
      ...nodes.map((i) => traced.full.canopy.nodes[i]?.owner as number),
    ]);
    this.stretchM = Float64Array.from(nodes, (i) => traced.places.stretchM[i] as number);
    this.worth = new Float64Array(this.rowOwner.length);
    this.byBearing = new Float64Array(1 + bearing.reduce((most, b) => Math.max(most, b), 0));
    this.byBearingIf = new Float64Array(this.byBearing.length);
    this.rowGroup = this.rowOwner.map((owner) => (free[owner] === 1 ? owner : 0));
    const own = gatheredBy(this.rowGroup, free.length);
    this.ownStart = own.start;
    this.ownRow = own.row;
  }

  /** Whether an owner can be flipped. */
  frees(owner: number): boolean {
    return this.table.frees(owner);
  }

  /** Whether all of these can be flipped, and all others stand as here. */
  serves(free: Uint8Array, standing: KeepSet): boolean {
    const { table } = this;
    return free.every(
      (may, owner) => table.frees(owner) || (may === 0 && table.keep[owner] === standing[owner]),
    );
  }

  /** The same that is flipped for itself. */
  fork(): KeepWorth {
    const { table, worth, byBearing, byBearingIf } = this;
    return Object.assign(Object.create(KeepWorth.prototype), this, {
      table: table.fork(),
      worth: worth.slice(),
      byBearing: byBearing.slice(),
      byBearingIf: byBearingIf.slice(),
    });
  }

  /** Bearing nodes there are, and one more. */
  get bearings(): number {
    return this.byBearing.length;
  }

  /** No set is worth more. */
  get most(): number {
    const { traced, values, stretchM } = this;
    const figs = traced.crop.setInFullLight * traced.sites.count;
    return figs + values.woodWorthFigsPerM * stretchM.reduce((sum, m) => sum + m, 0);
  }

  flip(owner: number): void {
    this.table.toggle(owner);
    this.isSummed = false;
  }

  /** Ripe figs, and shoot in fruiting light at its price in figs. */
  value(): number {
    this.sumUp();
    return this.worthOf(this.byBearing, this.woodM);
  }

  /** The same were this owner taken away, or put back. */
  valueIf(owner: number): number {
    this.sumUp();
    const { table, rowOwner, worth, ownRow, byBearingIf } = this;
    const stands = table.keep[owner] === 1;
    byBearingIf.set(this.byBearing);
    let woodM = this.woodM;
    const count = (row: number, by: number): void => {
      const bearing = this.traced.sites.bearing[row];
      if (bearing === undefined) woodM += by;
      else byBearingIf[bearing] = (byBearingIf[bearing] as number) + by;
    };
    table.peek(owner);
    for (let n = 0; n < table.peekCount; n++) {
      const row = table.peekRow[n] as number;
      const of = rowOwner[row] as number;
      if (of === owner || table.keep[of] !== 1) continue;
      count(
        row,
        this.worthAt(row, (table.share[row] as number) + (table.peekChange[n] as number)) -
          (worth[row] as number),
      );
    }
    const [from, to] = [this.ownStart[owner] as number, this.ownStart[owner + 1] as number];
    for (let k = from; k < to; k++) {
      const row = ownRow[k] as number;
      count(row, stands ? -(worth[row] as number) : this.worthAt(row, this.lightIf(row)));
    }
    return this.worthOf(byBearingIf, woodM);
  }

  /** Adds the figs set at the sites of an owner, and returns what its wood brings; of all that is not free for owner 0. */
  addPart(owner: number, setByBearing: Float64Array): number {
    this.readChanged();
    const { worth, ownRow, traced } = this;
    const [from, to] = [this.ownStart[owner] as number, this.ownStart[owner + 1] as number];
    let woodM = 0;
    for (let k = from; k < to; k++) {
      const row = ownRow[k] as number;
      const bearing = traced.sites.bearing[row];
      if (bearing === undefined) woodM += worth[row] as number;
      else setByBearing[bearing] = (setByBearing[bearing] as number) + (worth[row] as number);
    }
    return this.values.woodWorthFigsPerM * woodM;
  }

  /** What an owner, put back, would take from each: entry per owner, of all that is not free entry 0. */
  harmOf(owner: number): Float64Array {
    const { table, rowGroup, traced } = this;
    const harm = new Float64Array(this.ownStart.length - 1);
    table.peek(owner);
    for (let n = 0; n < table.peekCount; n++) {
      const row = table.peekRow[n] as number;
      const light = table.share[row] as number;
      const loss = this.worthAt(row, light) - this.worthAt(row, light + (table.peekChange[n] as number));
      const of = rowGroup[row] as number;
      const worth = row < traced.sites.count ? loss : this.values.woodWorthFigsPerM * loss;
      if (of !== owner) harm[of] = (harm[of] as number) + worth;
    }
    return harm;
  }

  /** Light of a row after what was peeked at last. */
  private lightIf(row: number): number {
    const at = this.table.peekedAt(row);
    return (this.table.share[row] as number) + (at < 0 ? 0 : (this.table.peekChange[at] as number));
  }

  private worthOf(byBearing: Float64Array, woodM: number): number {
    return ripened(byBearing, this.traced.crop).ripe + this.values.woodWorthFigsPerM * woodM;
  }

  private sumUp(): void {
    if (this.isSummed) return;
    this.readChanged();
    const { rowOwner, worth, byBearing, traced } = this;
    const { keep } = this.table;
    const { count, bearing } = traced.sites;
    byBearing.fill(0);
    for (let i = 0; i < count; i++) {
      if (keep[rowOwner[i] as number] !== 1) continue;
      const b = bearing[i] as number;
      byBearing[b] = (byBearing[b] as number) + (worth[i] as number);
    }
    let woodM = 0;
    for (let i = count; i < worth.length; i++) {
      if (keep[rowOwner[i] as number] === 1) woodM += worth[i] as number;
    }
    this.woodM = woodM;
    this.isSummed = true;
  }

  /** What a grower looks at, beside the worth. */
  figures(): KeepFigures {
    const ripeFigs = this.ripeFigs();
    const { table, traced, values, nodes } = this;
    const { canopy } = traced.full;
    const standing = canopy.shoots.map(({ owner }) => table.keep[owner] === 1);
    const [sums, counts] = [new Float64Array(standing.length), new Int32Array(standing.length)];
    nodes.forEach((node, n) => {
      const shoot = traced.places.shootOf[node] as number;
      sums[shoot] = (sums[shoot] as number) + (table.share[traced.sites.count + n] as number);
      counts[shoot] = (counts[shoot] as number) + 1;
    });
    const lights = [...sums.keys()].flatMap((shoot) => {
      const count = counts[shoot] as number;
      return standing[shoot] && count > 0 ? [(sums[shoot] as number) / count] : [];
    });
    return {
      shoots: standing.filter((stands) => stands).length,
      ripeFigs,
      meanLight: lights.length === 0 ? 0 : lights.reduce((sum, light) => sum + light, 0) / lights.length,
      deepShade: lights.filter((light) => light < values.fruitHalfAtFraction / 2).length,
    };
  }

  private ripeFigs(): number {
    this.sumUp();
    return ripened(this.byBearing, this.traced.crop).ripe;
  }

  private readChanged(): void {
    const { table, worth } = this;
    const { share, changed, keep } = table;
    for (let i = 0; i < worth.length; i++) {
      if (changed[i] === 0 || keep[this.rowOwner[i] as number] !== 1) continue;
      changed[i] = 0;
      worth[i] = this.worthAt(i, share[i] as number);
    }
  }

  private worthAt(row: number, light: number): number {
    const { crop, sites } = this.traced;
    if (row < sites.count) return crop.setInFullLight * crop.response(light);
    return light >= this.values.fruitHalfAtFraction ? (this.stretchM[row - sites.count] as number) : 0;
  }
}

/** Rows by their owner. */
function gatheredBy(rowOwner: Int32Array, ownerCount: number) {
  const start = new Int32Array(ownerCount + 1);
  for (const owner of rowOwner) start[owner + 1] = (start[owner + 1] as number) + 1;
  for (let o = 0; o < ownerCount; o++) start[o + 1] = (start[o + 1] as number) + (start[o] as number);
  const next = start.slice();
  const row = new Int32Array(rowOwner.length);
  rowOwner.forEach((owner, r) => {
    row[next[owner] as number] = r;
    next[owner] = (next[owner] as number) + 1;
  });
  return { start, row };
}

function rowSources({ stages, full, sites }: TracedSeason, nodes: readonly number[]): RowSource[] {
  const { count } = sites;
  return stages.map((stage, s) => {
    const receiver = new Int32Array(count + nodes.length).fill(-1);
    const factor = new Float64Array(count + nodes.length);
    const placeOf = receiverOf(stage);
    for (let i = 0; i < count; i++) receiver[i] = placeOf[sites.node[s * count + i] as number] ?? -1;
    factor.set(sites.weight.subarray(s * count, (s + 1) * count));
    if (stage === full) {
      receiver.set(nodes, count);
      factor.fill(1, count);
    }
    return { ledger: stage.ledger, light: stage.light, receiver, factor };
  });
}
