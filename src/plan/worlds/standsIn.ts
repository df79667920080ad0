/** What is known of a plan's doubt, as data. */

/** In how many worlds a cut is right. */
export interface StandsIn {
  readonly worlds: number;
  /** Where the plan is worth at least as much as without this cut; of a rule's cut, where the rule still asks for it. */
  readonly stands: number;
  /**
   * The kept bud or shoot that might as well go in its place: the best exchange on the same limb; and where the plan is worth at least
   * as much as with that exchange. Null for a rule's cut and where there is none.
   */
  readonly rival: Rival | null;
}

export interface Rival {
  readonly target: string;
  /** Name of the branch a bud sits on, and where along it, metres; of a shoot its own name and null. */
  readonly branch: string;
  readonly atM: number | null;
  readonly stands: number;
}

/** Of the worlds' values: a tenth lie below `low`, half below `middle`, a tenth above `high`. */
export interface Range {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export interface Confidence {
  readonly worlds: number;
  /** A cut that stands in a smaller share of the worlds is the grower's call. */
  readonly yourCallBelowShare: number;
  /**
   * Ripe figs of the main crop over the worlds, of the plan without what is the grower's call; and world by world how many more than with
   * nothing done. Null for a plan answered from the one before.
   */
  readonly figs: {
    readonly plan: Range;
    readonly doNothing: Range;
    readonly difference: Range;
    /** Worlds in which the plan ripens at least as many. */
    readonly betterIn: number;
  } | null;
}

/** Values at 10, 50 and 90 % of the way from the least to the greatest, straight between neighbours. */
export function rangeOf(values: readonly number[]): Range {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => {
    const place = share * (sorted.length - 1);
    const below = Math.floor(place);
    const [low, high] = [sorted[below] ?? Number.NaN, sorted[Math.ceil(place)] ?? Number.NaN];
    return low + (high - low) * (place - below);
  };
  return { low: at(0.1), middle: at(0.5), high: at(0.9) };
}
