/** Exponential integrals for the closed forms of canopies. */

/**
 * E1(x), x above 0: power series up to 1 (Abramowitz and Stegun 1964, eq. 5.1.11), continued fraction above (eq. 5.1.22),
 * both to rounding.
 */
function e1(x: number): number {
  if (x <= 1) {
    let [sum, term] = [-0.5772156649015329 - Math.log(x), 1];
    for (let k = 1; k < 40; k++) {
      term *= -x / k;
      sum -= term / k;
    }
    return sum;
  }
  let fraction = 0;
  for (let k = 200; k >= 1; k--) fraction = k / (1 + k / (x + fraction));
  return Math.exp(-x) / (x + fraction);
}

/** E3(x) by the recurrence of Abramowitz and Stegun, eq. 5.1.14. */
export function e3(x: number): number {
  const e2 = Math.exp(-x) - x * e1(x);
  return (Math.exp(-x) - x * e2) / 2;
}
