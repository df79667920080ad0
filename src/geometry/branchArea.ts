/**
 * Thickness at a fork. The rule of branch areas: a diameter to the power n is the sum of those it carries to the power
 * n; 2 keeps the area of the section (Eloy 2011, arXiv 1105.2591: 1.8 to 2.3 in trees measured).
 */

/** Diameter of wood that carries wood of these diameters; 0 for none. */
export function joinedDiameterM(carriedM: readonly number[], exponent: number): number {
  return carriedM.reduce((sum, d) => sum + d ** exponent, 0) ** (1 / exponent);
}

/** What is left for one more branch by the rule; 0 where the wood carries as much as it can already. */
export function leftDiameterM(woodM: number, carriedM: readonly number[], exponent: number): number {
  const left = woodM ** exponent - carriedM.reduce((sum, d) => sum + d ** exponent, 0);
  return Math.max(0, left) ** (1 / exponent);
}

/** Wood that leaves straight tapering wood at a share of its length (above 0 to 1). */
export interface Carried {
  readonly share: number;
  readonly diameterM: number;
}

/**
 * Base and tip of straight tapering wood that carries others: the base by the rule, the tip as thin as `leastTipM`
 * allows while nothing it carries is thicker than the wood at its place.
 */
export function taperFor(
  carried: readonly Carried[],
  leastBaseM: number,
  leastTipM: number,
  exponent: number,
): { readonly baseM: number; readonly tipM: number } {
  const diameters = carried.map(({ diameterM }) => diameterM);
  const atTip = carried.some(({ share }) => share > 0.99) ? [] : [leastTipM];
  const baseM = Math.max(leastBaseM, leastTipM, joinedDiameterM([...diameters, ...atTip], exponent));
  const tips = carried.map(({ share, diameterM }) => baseM - (baseM - diameterM) / share);
  return { baseM, tipM: Math.max(leastTipM, ...tips) };
}
