/**
 * The hard limits of a keep-set, as a penalty far above any gain of figs. The outermost bud of a branch stays: without it the
 * branch is headed, and what is left beyond the next shoot dies back (common practice). Near the base of each limb one shoot
 * stays, to which the limb can be cut back one day. That one, how many shoots a limb keeps and how far apart is settled at bud break, when fewer means stronger; a shoot in leaf only goes where that brings something.
 */
import type { FigValues } from '../species/fig.ts';
import { type Candidate, tooClose } from './candidates.ts';

/** Penalties in figs: no real gain comes near the least of them, and each outweighs those below it many times over. */
const perShareOver = 1e7;
const perBareBranch = 1e5;
const perBareBase = 1e4;
const perBreach = 1e3;
const perLeadingBud = 1e2;
/** In leaf the outermost shoot may go, but only where that brings a fig more than it bears, figs; our choice. */
const perLeadingShoot = 1;

export interface LimitInput {
  readonly candidates: readonly Candidate[];
  readonly values: FigValues;
  /** Leaf area that goes with each candidate and may not go beyond the share allowed, m2; 0 for buds. */
  readonly leafAreaM2: readonly number[];
  /** Leaf area of the whole tree, and what of it the cuts already settled take, m2. */
  readonly treeLeafAreaM2: number;
  readonly settledLeafAreaM2: number;
}

/** Which limits a set of kept candidates breaks. */
export interface Breaches {
  /** Share of the year's leaf area removed beyond what is allowed. */
  readonly shareOver: number;
  /** Branches left without a single shoot of those they had. */
  readonly bareBranches: number;
  /** Limbs left without a shoot near their base of those they had there: they could not be renewed from it. */
  readonly bareBases: number;
  /** Kept shoots beyond what a limb may carry, over all limbs. */
  readonly overFull: number;
  /** Branches that lose the bud, or the shoot in leaf, which carries them on. */
  readonly leadingBudsGone: number;
  readonly leadingShootsGone: number;
  /** Pairs of kept shoots too close on the same side. */
  readonly tooClosePairs: number;
}

export interface Limits {
  /** Entry per candidate, 1 kept. */
  breaches(kept: ArrayLike<number>): Breaches;
  penalty(kept: ArrayLike<number>): number;
  /** Least penalty of all sets that keep `least` and nothing beyond `most`. */
  floor(least: ArrayLike<number>, most: ArrayLike<number>): number;
}

export function keepLimits(input: LimitInput): Limits {
  const { candidates, values } = input;
  const spacingM = values.keptShootSpacingCm / 100;
  const close = candidates.map((a, i) =>
    [...candidates.keys()].filter(
      (j) => j !== i && a.bud !== null && tooClose(a, candidates[j] as Candidate, spacingM),
    ),
  );
  const limbs = grouped(candidates, (candidate) => (candidate.bud === null ? null : candidate.limb));
  const holds = (members: readonly number[]): number => candidates[members[0] ?? -1]?.limbHolds ?? 0;
  const bases = grouped(candidates, (candidate) => (candidate.renews ? candidate.limb : null)).filter(
    (members) => members.some((i) => candidates[i]?.bud !== null),
  );
  const branches = grouped(candidates, (candidate) => (candidate.on.parent === null ? null : candidate.on));
  const leaders = [...candidates.keys()].filter((i) => candidates[i]?.leads);
  const breaches = (kept: ArrayLike<number>): Breaches => {
    const countOf = (members: readonly number[]): number =>
      members.reduce((n, i) => n + (kept[i] as number), 0);
    return {
      shareOver: shareOver(input, kept),
      bareBranches: branches.filter((members) => countOf(members) === 0).length,
      bareBases: bases.filter((members) => countOf(members) === 0).length,
      overFull: limbs.reduce((n, members) => n + Math.max(0, countOf(members) - holds(members)), 0),
      leadingBudsGone: leaders.filter((i) => kept[i] === 0 && candidates[i]?.bud !== null).length,
      leadingShootsGone: leaders.filter((i) => kept[i] === 0 && candidates[i]?.bud === null).length,
      tooClosePairs: closePairs(close, kept),
    };
  };
  return {
    breaches,
    penalty: (kept) => cost(breaches(kept)),
    floor: (least, most) => {
      const { overFull, tooClosePairs } = breaches(least);
      return cost({ ...breaches(most), overFull, tooClosePairs });
    },
  };
}

const cost = (found: Breaches): number =>
  perShareOver * found.shareOver +
  perBareBranch * found.bareBranches +
  perBareBase * found.bareBases +
  perBreach * (found.overFull + found.tooClosePairs) +
  perLeadingBud * found.leadingBudsGone +
  perLeadingShoot * found.leadingShootsGone;

/** What broken limits cost in the search, figs; the price of a shoot in leaf that leads is none: it belongs to the worth. */
export const costOfBreaches = (found: Breaches): number => cost({ ...found, leadingShootsGone: 0 });

function shareOver(input: LimitInput, kept: ArrayLike<number>): number {
  if (input.treeLeafAreaM2 <= 0) return 0;
  const taken = input.leafAreaM2.reduce((sum, area, i) => (kept[i] === 1 ? sum : sum + area), 0);
  const share = (taken + input.settledLeafAreaM2) / input.treeLeafAreaM2;
  return Math.max(0, share - input.values.removedShareStopFraction);
}

function closePairs(close: readonly (readonly number[])[], kept: ArrayLike<number>): number {
  let pairs = 0;
  close.forEach((others, i) => {
    if (kept[i] === 1) for (const j of others) if (j > i && kept[j] === 1) pairs++;
  });
  return pairs;
}

function grouped<Key>(
  candidates: readonly Candidate[],
  keyOf: (candidate: Candidate) => Key | null,
): number[][] {
  const groups = new Map<Key, number[]>();
  candidates.forEach((candidate, i) => {
    const key = keyOf(candidate);
    if (key !== null) groups.set(key, [...(groups.get(key) ?? []), i]);
  });
  return [...groups.values()];
}
