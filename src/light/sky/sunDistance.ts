/** How far away the sun is. */

/** Amplitude (1e-8 au), phase (radians) and rate (radians per thousand years) of each term. */
type Terms = readonly (readonly [number, number, number])[];

const constantTerms: Terms = [
  [100013989, 0, 0],
  [1670700, 3.0984635, 6283.07585],
  [13956, 3.05525, 12566.1517],
  [3084, 5.1985, 77713.7715],
  [1628, 1.1739, 5753.3849],
  [1576, 2.8469, 7860.4194],
  [925, 5.453, 11506.77],
  [542, 4.564, 3930.21],
  [472, 3.661, 5884.927],
  [346, 0.964, 5507.553],
  [329, 5.9, 5223.694],
  [307, 0.299, 5573.143],
  [243, 4.273, 11790.629],
  [212, 5.847, 1577.344],
  [186, 5.022, 10977.079],
  [175, 3.012, 18849.228],
  [110, 5.055, 5486.778],
  [98, 0.89, 6069.78],
  [86, 5.69, 15720.84],
  [86, 1.27, 161000.69],
];
const risingTerms: Terms = [
  [103019, 1.10749, 6283.07585],
  [1721, 1.0644, 12566.1517],
  [702, Math.PI, 0],
];
const squareTerms: Terms = [[4359, 5.7846, 6283.0758]];

const sum = (terms: Terms, t: number): number =>
  terms.reduce((s, [a, b, c]) => s + a * Math.cos(b + c * t), 0);

/**
 * Distance from the Earth to the sun, au: the largest terms of VSOP87 (Bretagnon & Francou 1988) as in Meeus 1998,
 * Astronomical Algorithms, appendix III (digits from memory, held to a finer series by test). Terms below 0.0000008 au are left out, which together cost at most
 * 0.00001 au, in practice 0.000005.
 * @param thousandYears since noon of 1 January 2000, terrestrial time
 */
export function sunDistanceAu(thousandYears: number): number {
  const t = thousandYears;
  return (sum(constantTerms, t) + t * (sum(risingTerms, t) + t * sum(squareTerms, t))) * 1e-8;
}
