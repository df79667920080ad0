/** How much of the light comes from the sky and not straight from the sun. Each fit serves its own span of time alone. */

/** Clearness indices are shares; throws on others, for all fits here. */
function requireShare(who: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new Error(`${who}: a share of 0 to 1 is needed, got ${value}`);
}

/**
 * Diffuse share of global radiation in one **hour** with a clearness index, Erbs, Klein & Duffie 1982 (Solar Energy
 * 28:293), equation 1. Continuous within 0.0005 at 0.22 and 0.80. Single hours scatter by 0.1 and more.
 */
export function diffuseShareOfHour(clearness: number): number {
  requireShare('diffuseShareOfHour', clearness);
  const k = clearness;
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k > 0.8) return 0.165;
  return 0.9511 - 0.1604 * k + 4.388 * k ** 2 - 16.638 * k ** 3 + 12.336 * k ** 4;
}

const winterSunsetRad = (81.4 * Math.PI) / 180;

/**
 * Diffuse share of a **month's mean day**, Erbs, Klein & Duffie 1982, as Duffie & Beckman, equation 2.12.1: one fit for a
 * sunset hour angle up to 81.4 degrees (winter), one above. Fitted for clearness 0.3 to 0.8; down to 0.25, the dullest
 * month this project makes, the fits still rise evenly (0.73 and 0.74) and are used as they are; lower is taken as 0.25,
 * higher than 0.8 as 0.8.
 */
export function diffuseShareOfMonth(clearness: number, sunsetRad: number): number {
  requireShare('diffuseShareOfMonth', clearness);
  const k = Math.min(0.8, Math.max(0.25, clearness));
  return sunsetRad <= winterSunsetRad
    ? 1.391 - 3.56 * k + 4.189 * k ** 2 - 2.137 * k ** 3
    : 1.311 - 3.022 * k + 3.427 * k ** 2 - 1.821 * k ** 3;
}

/**
 * Diffuse share of PAR from the diffuse share of global radiation: Spitters, Toussaint & Goudriaan 1986 (Agricultural and Forest
 * Meteorology 38:217), equations 9 and 10. The sky is richer in PAR than the beam, so it is the larger of the two. Their
 * denominator hands the bright ring round the sun to the beam; with the ring left in the sky it is 1.
 * @param sinElevation of the sun, 0 to 1
 */
export function diffuseShareOfPar(
  diffuseShareOfGlobal: number,
  sinElevation: number,
  ring: 'in the beam' | 'in the sky' = 'in the beam',
): number {
  requireShare('diffuseShareOfPar', diffuseShareOfGlobal);
  requireShare('diffuseShareOfPar', sinElevation);
  const q = diffuseShareOfGlobal;
  const clear = 1 - q * q;
  const cosCubed = (1 - sinElevation ** 2) ** 1.5;
  const handedOver = ring === 'in the beam' ? clear * sinElevation ** 2 * cosCubed : 0;
  return Math.min(1, ((1 + 0.3 * clear) * q) / (1 + handedOver));
}
