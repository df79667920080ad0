/** How a fence is drawn: upright slats with gaps between them that come to its open share. For looks alone. */

/** From the middle of one slat to the next, and how thin a slat may be, metres; and how many there may be. */
const [pitchM, thinnestM, most] = [0.12, 0.004, 160] as const;

/** @returns width of a slat and where the middles lie along the fence, from its middle, metres */
export function slatsOf(
  lengthM: number,
  openFraction: number,
): { readonly widthM: number; readonly atM: readonly number[] } {
  const count = openFraction === 0 ? 1 : Math.min(most, Math.max(1, Math.round(lengthM / pitchM)));
  const eachM = lengthM / count;
  return {
    widthM: Math.max(thinnestM, eachM * (1 - openFraction)),
    atM: Array.from({ length: count }, (_, i) => (i + 0.5) * eachM - lengthM / 2),
  };
}
