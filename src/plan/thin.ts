/** Thinning as a search problem: which buds or shoots to keep, scored exactly from the ledger. */
import type { Tree } from '../geometry/tree.ts';
import { ownersLeft } from '../growth/owners.ts';
import type { FigValues } from '../species/fig.ts';
import type { Candidate } from './candidates.ts';
import type { ThinProblem } from './choice.ts';
import { KeepWorth } from './keepWorth.ts';
import { keepLimits } from './limits.ts';
import type { TracedSeason } from './tracedSeason.ts';
import { onSuckers } from './yearlyLimit.ts';

export interface ThinInput {
  /** As it was sketched. */
  readonly tree: Tree;
  readonly traced: TracedSeason;
  readonly values: FigValues;
  /** Those the search is free to take, none of them pinned. */
  readonly candidates: readonly Candidate[];
  /** Candidates that stay whatever comes: pinned by the grower. They count for every limit. */
  readonly pinned: readonly Candidate[];
  /** Ids of all that goes already. */
  readonly settled: ReadonlySet<string>;
}

/**
 * Worth of a keep-set: ripe figs of the season, and shoot in fruiting light at its price in figs; less the upkeep of each
 * shoot and the limits broken. Fruiting light is that of the days at full leaf.
 */
export function thinProblem(input: ThinInput): ThinProblem {
  const { traced, values, candidates, pinned, settled } = input;
  const { owners: all } = traced.full.canopy;
  const ownerOf = new Map(all.map((owner, i) => [owner?.id, i]));
  const owners = candidates.map((candidate) => ownerOf.get(candidate.id) ?? 0);
  const keep = ownersLeft(all, settled);
  const free = new Uint8Array(all.length);
  for (const owner of owners) if (owner > 0) free[owner] = 1;
  const worth = new KeepWorth(traced, values, free, keep);
  const limits = keepLimits({ candidates: [...candidates, ...pinned], values, ...leafAreas(input, keep) });
  const kept = new Uint8Array(candidates.length + pinned.length).fill(1);
  const shares = [...candidates, ...pinned].map(({ bud }) => (bud === null ? upkeepInLeaf : 1));
  let standing = shares.reduce((sum, share) => sum + share, 0);
  const partners = partnersWithin(candidates);
  const upkeep = upkeepFigs(traced, values);
  return {
    count: candidates.length,
    partnersOf: (member) => partners[member] ?? [],
    value: () => worth.value() - upkeep * standing - limits.penalty(kept),
    figures: () => worth.figures(),
    penalty: () => limits.penalty(kept),
    flip: (member) => {
      kept[member] = 1 - (kept[member] as number);
      standing += (2 * kept[member] - 1) * (shares[member] as number);
      const owner = owners[member] as number;
      if (owner > 0) worth.flip(owner);
    },
  };
}

/** Part of the upkeep that a shoot in leaf must still bring: its share of the reserve is spent. Our choice. */
const upkeepInLeaf = 0.2;

/**
 * What a kept shoot must bring: at most a tenth of what a mean shoot of this tree would ripen in full light, so that no
 * shoot goes for bearing nothing where the season lets nothing ripen.
 */
function upkeepFigs({ full, sites, crop }: TracedSeason, values: FigValues): number {
  const ripen = sites.bearing.reduce((sum, bearing) => sum + crop.ripeAt(bearing, 0), 0);
  const inFullLight = (crop.setInFullLight * ripen) / Math.max(1, full.canopy.shoots.length);
  return Math.min(values.keptShootUpkeepFigs, inFullLight / 10);
}

/** Swaps stay on one limb: between limbs that are full a swap breaks a limit, between others single moves do. */
function partnersWithin(candidates: readonly Candidate[]): number[][] {
  return candidates.map(({ limb }) => [...candidates.keys()].filter((j) => candidates[j]?.limb === limb));
}

/** Leaves that stand today and would be cut off; those of buds have yet to grow and cost nothing, those of suckers are not the tree's. */
function leafAreas({ tree, traced, candidates, pinned }: ThinInput, keep: Uint8Array) {
  const { canopy } = traced.full;
  const suckers = onSuckers(tree);
  const onAxes = canopy.shoots.filter(
    ({ owner, id }) => canopy.owners[owner]?.kind === 'axis' && !suckers.has(id),
  );
  const areaOf = new Map(onAxes.map((shoot) => [shoot.id, shoot.leafAreaM2]));
  const sum = (areas: readonly number[]): number => areas.reduce((a, b) => a + b, 0);
  return {
    leafAreaM2: [...candidates, ...pinned].map((candidate) => areaOf.get(candidate.id) ?? 0),
    treeLeafAreaM2: sum(onAxes.map((shoot) => shoot.leafAreaM2)),
    settledLeafAreaM2: sum(
      onAxes.filter((shoot) => keep[shoot.owner] !== 1).map((shoot) => shoot.leafAreaM2),
    ),
  };
}
