/** Where figs can sit in a season, and which light each of them lives in. */
import type { Canopy } from '../growth/canopy.ts';
import type { FigValues } from '../species/fig.ts';
import type { LightStage } from './stages.ts';

/** All figs that may ripen, one a bearing node. Of S stages and n sites. */
export interface FigSites {
  readonly count: number;
  readonly stageCount: number;
  /** Per site: owner of its node. */
  readonly owner: Int32Array;
  /** Per site: 1 for the lowest bearing node of its shoot. */
  readonly bearing: Int32Array;
  /** S x n, stage by stage: its node in the canopy of the stage, -1 where it has none; and the share of its life spent there. */
  readonly node: Int32Array;
  readonly weight: Float64Array;
}

export interface GrownStage {
  readonly stage: LightStage;
  readonly canopy: Canopy;
}

/** Sites whose fig ripens in fewer seasons than this are left out. */
const leastChance = 1e-3;

/** Index of the shoot that a node's owner is, or is an end of. */
export function shootOf(
  canopy: Canopy,
  indexOfOwner: ReadonlyMap<number, number>,
  owner: number,
): number | undefined {
  const known = indexOfOwner.get(owner);
  const whole = canopy.owners[owner];
  return known === undefined && whole?.kind === 'end' ? shootOf(canopy, indexOfOwner, whole.parent) : known;
}

/**
 * The bearing nodes of the last canopy. A fig appears one leaf's heat after the one below it, the lowest at
 * `firstFigHeatGdd8`, and hangs until it is ripe, `figToRipeGdd8` later; what it gets of light is the mean over the
 * stages it lives through, each by its part in that heat (our choice: no fig trial tells when light counts most).
 * @param ripeAt chance to ripen of the n-th bearing node of a shoot
 */
export function figSites(
  stages: readonly GrownStage[],
  values: FigValues,
  figToRipeGdd8: number,
  ripeAt: (bearing: number) => number,
): FigSites {
  const last = stages.at(-1);
  if (last === undefined) throw new Error('figSites: at least one stage is needed, got none');
  const found = bearingNodes(last.canopy).filter(({ bearing }) => ripeAt(bearing) >= leastChance);
  const [count, stageCount] = [found.length, stages.length];
  const sites: FigSites = {
    count,
    stageCount,
    owner: Int32Array.from(found, (site) => site.owner),
    bearing: Int32Array.from(found, (site) => site.bearing),
    node: new Int32Array(stageCount * count).fill(-1),
    weight: new Float64Array(stageCount * count),
  };
  const nodeAt = stages.map(({ canopy }) => new Map(canopy.nodes.map((one, i) => [nodeKey(one), i])));
  found.forEach((site, i) => {
    const appears = values.firstFigHeatGdd8 + (site.bearing - 1) * values.phyllochronGdd8;
    const lives = stages.map(({ stage }, s) =>
      nodeAt[s]?.has(nodeKey(site)) ? overlap(stage, appears, appears + figToRipeGdd8) : 0,
    );
    const whole = lives.reduce((sum, life) => sum + life, 0);
    stages.forEach((_, s) => {
      // A fig that appears after the season is over would have lived in its last light.
      const weight = whole > 0 ? (lives[s] as number) / whole : s === stageCount - 1 ? 1 : 0;
      if (weight === 0) return;
      sites.node[s * count + i] = nodeAt[s]?.get(nodeKey(site)) ?? -1;
      sites.weight[s * count + i] = weight;
    });
  });
  return sites;
}

const nodeKey = ({ owner, node }: { readonly owner: number; readonly node: number }): string =>
  `${owner} ${node}`;

const overlap = ({ fromGdd8, toGdd8 }: LightStage, from: number, to: number): number =>
  Math.max(0, Math.min(toGdd8, to) - Math.max(fromGdd8, from));

interface BearingNode {
  readonly owner: number;
  readonly node: number;
  readonly bearing: number;
}

function bearingNodes(canopy: Canopy): BearingNode[] {
  const indexOfOwner = new Map(canopy.shoots.map((shoot, i) => [shoot.owner, i]));
  return canopy.nodes.flatMap(({ owner, node }) => {
    const shoot = canopy.shoots[shootOf(canopy, indexOfOwner, owner) ?? -1];
    if (shoot === undefined) throw new Error(`figSites: owner ${owner} has nodes but belongs to no shoot`);
    const bearing = node - shoot.blindNodes;
    return bearing >= 1 ? [{ owner, node, bearing }] : [];
  });
}

/** Nodes of a stage's canopy that the light of a fig is asked at, ascending. */
export function nodesWithFigs({ count, node }: FigSites, stage: number): number[] {
  const nodes = new Set(node.subarray(stage * count, (stage + 1) * count));
  nodes.delete(-1);
  return [...nodes].sort((a, b) => a - b);
}

/** Light on the fig of a site: the mean over its stages. `nodeLight`: per stage, the share of open sky of each node. */
export function siteLight(
  { count, stageCount, node, weight }: FigSites,
  nodeLight: readonly ArrayLike<number>[],
  site: number,
): number {
  let light = 0;
  for (let s = 0; s < stageCount; s++) {
    const at = node[s * count + site] as number;
    if (at >= 0)
      light += (weight[s * count + site] as number) * ((nodeLight[s] as ArrayLike<number>)[at] as number);
  }
  return light;
}
