/** What a keep-set is worth to the search: figs and wood, followed from one flip to the next. */
import type { KeepSet } from '../light/ledger.ts';
import { mergeRows, type RowSource } from '../light/mergeForSearch.ts';
import type { SearchTable } from '../light/searchTable.ts';
import type { FigValues } from '../species/fig.ts';
import type { KeepFigures } from './choice.ts';
import { ripened } from './crop.ts';
import type { TracedSeason } from './tracedSeason.ts';

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
  }

  flip(owner: number): void {
    this.table.toggle(owner);
  }

  /** Ripe figs, and shoot in fruiting light at its price in figs. */
  value(): number {
    const { rowOwner, worth, traced, values } = this;
    const { keep } = this.table;
    const ripe = this.ripeFigs();
    let woodM = 0;
    for (let i = traced.sites.count; i < worth.length; i++) {
      if (keep[rowOwner[i] as number] === 1) woodM += worth[i] as number;
    }
    return ripe + values.woodWorthFigsPerM * woodM;
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
    return ripened(byBearing, traced.crop).ripe;
  }

  private readChanged(): void {
    const { table, worth, traced, values, stretchM } = this;
    const { share, changed, keep } = table;
    const { crop, sites } = traced;
    for (let i = 0; i < worth.length; i++) {
      if (changed[i] === 0 || keep[this.rowOwner[i] as number] !== 1) continue;
      changed[i] = 0;
      const light = share[i] as number;
      if (i < sites.count) worth[i] = crop.setInFullLight * crop.response(light);
      else worth[i] = light >= values.fruitHalfAtFraction ? (stretchM[i - sites.count] as number) : 0;
    }
  }
}

function rowSources({ stages, full, sites }: TracedSeason, nodes: readonly number[]): RowSource[] {
  const { count } = sites;
  return stages.map((stage, s) => {
    const receiver = new Int32Array(count + nodes.length).fill(-1);
    const factor = new Float64Array(count + nodes.length);
    receiver.set(sites.node.subarray(s * count, (s + 1) * count));
    factor.set(sites.weight.subarray(s * count, (s + 1) * count));
    if (stage === full) {
      receiver.set(nodes, count);
      factor.fill(1, count);
    }
    return { ledger: stage.ledger, light: stage.light, receiver, factor };
  });
}
