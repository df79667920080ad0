/** What stands of a plan's canopy once some cuts are made, and what it bears: counted anew, by another way than the plan counts. */
import { exposureOf, nodeTable } from '../../src/light/nodeTable.ts';
import type { Cut } from '../../src/plan/cut.ts';
import type { PlanInput } from '../../src/plan/input.ts';
import type { TrialContext } from '../../src/plan/trial.ts';
import { workYear } from '../../src/plan/windows.ts';

export class Stand {
  readonly keep: Uint8Array;
  readonly nodeLight: readonly number[];
  readonly siteSet: readonly number[];
  readonly siteRipe: readonly number[];
  readonly ripe: number;
  readonly fruitingWoodM: number;

  constructor({ traced, input }: TrialContext, cuts: readonly Cut[]) {
    const { full, light, stages, sites } = traced;
    const { values } = input;
    this.keep = standing(traced.full.canopy.owners, input, cuts);
    const tables = stages.map(({ ledger }) => nodeTable(ledger, undefined, this.keep));
    const lightOf = (s: number, of: typeof light): number[] =>
      exposureOf(tables[s] as (typeof tables)[number], of).map(({ share }) => share);
    this.nodeLight = lightOf(stages.indexOf(full), light);
    const byStage = stages.map((stage, s) =>
      stages.length === 1 ? this.nodeLight : atNodes(stage, lightOf(s, stage.light)),
    );
    const siteLight = Array.from({ length: sites.count }, (_, i) =>
      byStage.reduce((sum, nodes, s) => {
        const at = s * sites.count + i;
        return sum + (sites.weight[at] as number) * (nodes[sites.node[at] as number] ?? 0);
      }, 0),
    );
    this.siteSet = siteLight.map((share, i) =>
      this.keep[sites.owner[i] as number] === 1 ? values.nodeFruitSetFraction * response(share, values) : 0,
    );
    const set = this.siteSet.reduce((sum, figs) => sum + figs, 0);
    const held =
      input.potVolumeL === null
        ? Infinity
        : values.figsHeldIn47L * (input.potVolumeL / 47) ** values.potSizeExponent;
    const q = set / held;
    const { season } = workYear(input);
    const heatAtEnd = season.heat.sumAt(season.ripeningEndsOn);
    const late = values.overloadLateGdd8 * Math.min(1, Math.max(0, q - 1));
    this.siteRipe = this.siteSet.map(
      (figs, i) => figs * ripens(sites.bearing[i] as number, late, input, heatAtEnd) * (1 + q ** 4) ** -0.25,
    );
    this.ripe = this.siteRipe.reduce((sum, figs) => sum + figs, 0);
    this.fruitingWoodM = full.canopy.nodes.reduce(
      (sum, { owner }, i) =>
        this.keep[owner] === 1 && (this.nodeLight[i] as number) >= values.fruitHalfAtFraction
          ? sum + (traced.places.stretchM[i] as number)
          : sum,
      0,
    );
  }
}

/** By node of the canopy. */
function atNodes({ asked }: TrialContext['traced']['full'], lights: readonly number[]): number[] {
  const byNode: number[] = [];
  asked.forEach((node, i) => {
    byNode[node] = lights[i] as number;
  });
  return byNode;
}

type Owners = TrialContext['traced']['full']['canopy']['owners'];

function standing(owners: Owners, { tree }: PlanInput, cuts: readonly Cut[]): Uint8Array {
  const keep = new Uint8Array(owners.length);
  keep[0] = 1;
  const shortened = cuts.filter(({ kind, atM }) => kind !== 'rub off bud' && atM > 0);
  const beyond = (id: string): boolean =>
    shortened.some(({ target, atM }) =>
      tree.axes.some(
        (axis) =>
          (axis.id === id && axis.parentId === target && axis.atM > atM) ||
          (axis.id === target && axis.buds.some((bud) => bud.id === id && bud.atM > atM)),
      ),
    );
  owners.forEach((owner, i) => {
    if (owner === null) return;
    const goes =
      owner.kind === 'end'
        ? shortened.some(({ target, atM }) => owner.id === `${target} beyond ${atM} m`)
        : cuts.some(({ target, atM }) => target === owner.id && atM === 0) || beyond(owner.id);
    keep[i] = !goes && keep[owner.parent] === 1 ? 1 : 0;
  });
  return keep;
}

/** Equation 8.1. */
function response(x: number, values: PlanInput['values']): number {
  const { fruitNoneBelowFraction: a, fruitHalfAtFraction: b, fruitFullFromFraction: c } = values;
  if (x <= a) return 0;
  if (x >= c) return 1;
  const w = x < b ? b - a : c - b;
  return 0.5 + (0.5 / 0.45) * (1 / (1 + Math.exp((-Math.log(19) * (x - b)) / w)) - 0.5);
}

/** Equation 8.2. */
function ripens(bearing: number, late: number, input: PlanInput, heatAtEnd: number): number {
  const { values, ripening } = input;
  const first = {
    early: values.firstRipeEarlyHeatGdd8,
    mid: values.firstRipeMidHeatGdd8,
    late: values.firstRipeLateHeatGdd8,
  }[ripening];
  const h = first + values.phyllochronGdd8 * (bearing - 1) + late;
  const s = (values.seasonEndSpreadGdd8 * Math.sqrt(3)) / Math.PI;
  return 1 / (1 + Math.exp((h - heatAtEnd) / s));
}
