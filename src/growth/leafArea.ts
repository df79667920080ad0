import type { FigValues } from '../species/fig.ts';

type LeafAreaValues = Pick<FigValues, 'leafAreaCoefficient' | 'leafAreaExponent'>;

/**
 * Area of a blade from the length of its midrib: A = 2.879 C^1.5451, A in cm2 and C in cm.
 * Source: leaf area of fig from linear measures, Ciencia Rural 44(7), 2014: one cultivar, 600 leaves; the spread
 * about the curve is 48 cm2. Tabulated here for 10 to 30 cm; below that it gives blades broader than long.
 * The exponent is not 2: large blades are narrower for their length. Dropped: differences between cultivars.
 * @param midribM metres, above 0
 * @returns square metres
 */
export function leafAreaM2(midribM: number, values: LeafAreaValues): number {
  if (!(midribM > 0)) throw new Error(`leafAreaM2: the midrib must be above 0 m, got ${midribM}`);
  return (values.leafAreaCoefficient * (midribM * 100) ** values.leafAreaExponent) / 1e4;
}
