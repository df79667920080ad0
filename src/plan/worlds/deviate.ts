/** The chance of the worlds: what a number is depends on the world and on what it is for, on nothing else. */
import { randomNormal } from '../../geometry/random.ts';
import { type FigParameterName, figParameters } from '../../species/fig.ts';

/** One way in which tree, kind and year may differ from what the plan was made with. */
export interface World {
  /** From 0. */
  readonly number: number;
  /** Two of them are two other sets of worlds. */
  readonly seed: number;
}

/** Larger errors than so many standard deviations are not drawn: a grower sees them. */
const mostDeviations = 2;

/**
 * A standard normal deviate, cut at 2. Worlds come in pairs, 0 and 1, 2 and 3: the second errs as much as the first the other
 * way, so that pairs are right in the mean (antithetic variates, Hammersley & Morton 1956).
 */
export function deviate({ number, seed }: World, ...purpose: readonly number[]): number {
  const drawn = randomNormal(seed, number >> 1, ...purpose);
  const within = Math.max(-mostDeviations, Math.min(mostDeviations, drawn));
  return number % 2 === 0 ? within : -within;
}

/** A figure so many deviations from its value: each end of its range is two away. Never beyond that range. */
export function withinRange(name: FigParameterName, value: number, deviations: number): number {
  const { min, max } = figParameters[name];
  const perDeviation = (deviations < 0 ? value - min : max - value) / mostDeviations;
  return Math.min(max, Math.max(min, value + Math.max(0, perDeviation) * deviations));
}
