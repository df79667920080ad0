/** Thinning as a search problem: which buds or shoots to keep, scored exactly from the ledger. */
import type { Tree } from '../geometry/tree.ts';
import { ownersLeft } from '../growth/owners.ts';
import type { FigValues } from '../species/fig.ts';
import type { KeepPart, PartedProblem } from './bound.ts';
import type { Candidate } from './candidates.ts';
import type { ChoiceProblem } from './choice.ts';
import { type CropModel, lateAt } from './crop.ts';
import { KeepWorth } from './keepWorth.ts';
import { type Breaches, keepLimits, type Limits } from './limits.ts';
import type { TracedSeason } from './tracedSeason.ts';
import { onSuckers } from './yearlyLimit.ts';

export interface ThinProblem extends ChoiceProblem, PartedProblem {
  /** Its light, to be used again for other pins. */
  light(): SoughtLight;
  /** Which limits the set as it stands breaks. */
  breaches(): Breaches;
}

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
  /** Light of a search before, which is used again where it can be. */
  readonly sought?: SoughtLight | null;
}

/**
 * Worth of a keep-set: ripe figs of the season, and shoot in fruiting light at its price in figs; less the upkeep of each
 * shoot and the limits broken. Fruiting light is that of the days at full leaf.
 */
export function thinProblem(input: ThinInput): ThinProblem {
  const { traced, values, candidates, pinned, settled } = input;
  const { owners: all } = traced.full.canopy;
  const ownerOf = new Map(all.map((owner, i) => [owner?.id, i]));
  const ownersOf = (some: readonly Candidate[]): number[] => some.map(({ id }) => ownerOf.get(id) ?? 0);
  const [owners, pinnedOwners] = [ownersOf(candidates), ownersOf(pinned)];
  const keep = ownersLeft(all, settled);
  const { worth, standing } = lightFor(input, owners, pinnedOwners, keep);
  const shares = [...candidates, ...pinned].map(({ bud }) => (bud === null ? upkeepInLeaf : 1));
  return problemOver(worth, {
    owners,
    pinnedOwners,
    sought: standing,
    shares,
    partners: partnersWithin(candidates),
    upkeep: upkeepFigs(traced, values),
    limits: keepLimits({ candidates: [...candidates, ...pinned], values, ...leafAreas(input, keep) }),
    crop: traced.crop,
  });
}

/** The light of a search, for another one on the same canopy: all stand that may be taken, kept or marked. */
export interface SoughtLight {
  readonly traced: TracedSeason;
  readonly worth: KeepWorth;
}

/** Buds that go whatever is found, and what is pinned, can be toggled too, so that the same light answers other pins. */
function lightFor(
  { traced, values, settled, sought }: ThinInput,
  owners: readonly number[],
  pinnedOwners: readonly number[],
  keep: Uint8Array,
): { readonly worth: KeepWorth; readonly standing: SoughtLight } {
  const { owners: all } = traced.full.canopy;
  const marked = all.map((owner) => owner?.kind === 'bud' && settled.has(owner.id));
  const free = new Uint8Array(all.length);
  for (const owner of [...owners, ...pinnedOwners]) if (owner > 0) free[owner] = 1;
  const standing = keep.slice();
  marked.forEach((goes, owner) => {
    if (goes) [free[owner], standing[owner]] = [1, 1];
  });
  const known = sought?.traced === traced && sought.worth.serves(free, standing) ? sought : null;
  const light = known ?? { traced, worth: new KeepWorth(traced, values, free, standing) };
  const worth = light.worth.fork();
  keep.forEach((stands, owner) => {
    if (stands !== 1 && worth.frees(owner)) worth.flip(owner);
  });
  return { worth, standing: light };
}

interface Fixed {
  /** Owner of each candidate; 0 for one that is not in the canopy. */
  readonly owners: readonly number[];
  readonly pinnedOwners: readonly number[];
  readonly sought: SoughtLight;
  /** Part of the upkeep of each candidate, then of each pinned one. */
  readonly shares: readonly number[];
  readonly partners: readonly (readonly number[])[];
  readonly upkeep: number;
  readonly limits: Limits;
  readonly crop: CropModel;
}

function problemOver(worth: KeepWorth, fixed: Fixed): ThinProblem {
  const { owners, shares, partners, upkeep, limits } = fixed;
  const count = owners.length;
  const { most } = worth;
  const kept = new Uint8Array(shares.length).fill(1);
  let standing = shares.reduce((sum, share) => sum + share, 0);
  const flip = (member: number): void => {
    kept[member] = 1 - (kept[member] as number);
    standing += (2 * kept[member] - 1) * (shares[member] as number);
    const owner = owners[member] as number;
    if (owner > 0) worth.flip(owner);
  };
  const become = (set: ArrayLike<number>): void => {
    for (let i = 0; i < count; i++) if (kept[i] !== set[i]) flip(i);
  };
  return {
    count,
    partnersOf: (member) => partners[member] ?? [],
    value: () => worth.value() - upkeep * standing - limits.penalty(kept),
    valueIf: (member, atLeast) => {
      const was = kept[member] as number;
      kept[member] = 1 - was;
      const cost = upkeep * (standing + (1 - 2 * was) * (shares[member] as number)) + limits.penalty(kept);
      kept[member] = was;
      if (most - cost < atLeast) return most - cost;
      const owner = owners[member] as number;
      return (owner > 0 ? worth.valueIf(owner) : worth.value()) - cost;
    },
    figures: () => worth.figures(),
    light: () => fixed.sought,
    penalty: () => limits.penalty(kept),
    breaches: () => limits.breaches(kept),
    flip,
    become,
    ...partsOf(worth, fixed),
    fork: () => {
      const standsNow = kept.slice(0, count);
      become(new Uint8Array(count).fill(1));
      const twin = problemOver(worth.fork(), fixed);
      become(standsNow);
      return twin;
    },
  };
}

/** What the bound asks. */
function partsOf(worth: KeepWorth, { owners, pinnedOwners, shares, upkeep, limits, crop }: Fixed) {
  const count = owners.length;
  const pinnedShares = shares.slice(count).reduce((sum, share) => sum + share, 0);
  const withPinned = (set: ArrayLike<number>): number[] =>
    shares.map((_, i) => (i < count ? (set[i] as number) : 1));
  return {
    held: crop.held,
    ripeAtLoad: (load: number): Float64Array => {
      const late = lateAt(load, crop.lateAtTwiceGdd8);
      return Float64Array.from({ length: worth.bearings }, (_, bearing) => crop.ripeAt(bearing, late));
    },
    addPart: (member: number, part: KeepPart): void => {
      const owner = member === count ? 0 : (owners[member] as number);
      part.minus += upkeep * (member === count ? pinnedShares : (shares[member] as number));
      const of = member === count ? [0, ...pinnedOwners.filter((one) => one > 0)] : owner > 0 ? [owner] : [];
      for (const one of of) part.plus += worth.addPart(one, part.setByBearing);
    },
    harmOf: (member: number): Float64Array => {
      const owner = owners[member] as number;
      if (owner === 0) return new Float64Array(count + 1);
      const harm = worth.harmOf(owner);
      for (const one of pinnedOwners) if (one > 0) harm[0] = (harm[0] as number) + (harm[one] as number);
      return Float64Array.from([...owners, 0], (other) => harm[other] as number);
    },
    penaltyFloor: (least: ArrayLike<number>, most: ArrayLike<number>): number =>
      limits.floor(withPinned(least), withPinned(most)),
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
